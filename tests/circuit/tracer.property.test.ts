import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cannotBeIsolated } from "../../language-server/src/circuit/always-live.js";
import type { Circuit, Terminal } from "../../language-server/src/circuit/circuit.js";
import { isolate } from "../../language-server/src/circuit/cuts.js";
import { traceLive } from "../../language-server/src/circuit/live.js";
import { allPositions, modes, type Situation } from "../../language-server/src/circuit/modes.js";
import type { Item } from "../../language-server/src/design/things.js";
import { type Wired, wired } from "./from-text.js";
import { allMinimalSets, type Naive, naive } from "./naive.js";
import { installations } from "./random-circuit.js";

const byDay = { light: "day", supply: "grid" } as const;

function positionsOf(changeovers: readonly Item[], bits: number): NonNullable<Situation["positions"]> {
  return new Map(changeovers.map((item, index) => [item, (bits >> index) & 1 ? "backup" : "grid"]));
}

/** Sources at each terminal, without the charge of capacitors. */
function live(circuit: Circuit, situation: Situation): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const [terminal, arrivals] of traceLive(circuit, situation).arrivals) {
    const sources = arrivals.filter(({ through }) => through !== "stored").map(({ source }) => source.id);
    if (sources.length > 0) found.set(terminal.id, new Set(sources));
  }
  return found;
}

function isFed(circuit: Circuit, situation: Situation, terminals: readonly Terminal[]): boolean {
  const found = live(circuit, situation);
  return terminals.some(({ id }) => found.has(id));
}

function everything(text: string): { house: Wired; slow: Naive } {
  const house = wired(text);
  return { house, slow: naive(house.circuit) };
}

describe("tracing against brute force on random circuits", () => {
  test("reaches exactly what is reached when liveness is spread until nothing changes", () => {
    fc.assert(
      fc.property(installations({ min: 0, max: 12 }), fc.nat(), fc.nat(), (text, openBits, positionBits) => {
        const { house, slow } = everything(text);
        const open = openBits % (1 << slow.devices.length);
        const position = positionBits % (1 << slow.changeovers.length);
        const opened = new Set(slow.devices.filter((_, bit) => open & (1 << bit)));
        const positions = positionsOf(slow.changeovers, position);
        const found = live(house.circuit, { ...byDay, open: opened, positions });
        slow.sources.forEach(({ id }, source) => {
          const reached = slow.reached(source, open, position);
          const wanted = slow.terminals.filter((_, terminal) => reached.has(terminal)).sort();
          const traced = [...found].filter(([, sources]) => sources.has(id)).map(([terminal]) => terminal);
          expect(traced.sort()).toEqual(wanted);
        });
      }),
      { numRuns: 300 },
    );
  });

  test("opening more devices never makes more live, in any mode", () => {
    fc.assert(
      fc.property(installations({ min: 1, max: 12 }), fc.nat(), fc.nat(), (text, some, more) => {
        const { house, slow } = everything(text);
        const all = [...house.design.items].filter(({ kind }) => kind === "isolator" || kind === "changeover");
        const fewer = new Set(all.filter((_, bit) => some & (1 << bit)));
        const larger = new Set(all.filter((_, bit) => (some | more) & (1 << bit)));
        for (const mode of modes) {
          const before = live(house.circuit, { ...mode, open: fewer });
          for (const [terminal, sources] of live(house.circuit, { ...mode, open: larger }))
            for (const source of sources) expect(before.get(terminal)).toContain(source);
        }
        expect(slow.terminals.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe("sets of devices that isolate, on random circuits", () => {
  const targetOf = ({ design }: Wired, number: number): Item => design.items[number % design.items.length]!;

  test("are exactly the minimal ones that trying every set finds", () => {
    const sizes: number[] = [];
    const compare = (text: string, number: number): void => {
      const { house, slow } = everything(text);
      const item = targetOf(house, number);
      const { cuts, complete, staysLive, terminals } = isolate(house.circuit, item, { sets: 9999, looked: 9999 });
      const always = new Set(staysLive.map(({ terminal }) => terminal));
      const targets = terminals.filter((terminal) => !always.has(terminal));
      if (targets.length === 0) return;
      const wanted = allMinimalSets(
        slow,
        targets.map(({ id }) => slow.terminals.indexOf(id)),
      );
      expect(complete).toBe(true);
      const sorted = (sets: readonly (readonly string[])[]): string[] =>
        sets.map((set) => [...set].sort().join(" ")).sort();
      expect(sorted(cuts.map((cut) => cut.map(({ id }) => id)))).toEqual(sorted(wanted));
      expect(cuts[0]?.length).toBe(Math.min(...wanted.map((set) => set.length)));
      sizes.push(wanted.length);
    };
    fc.assert(fc.property(installations({ min: 2, max: 8 }), fc.nat(9999), compare), { numRuns: 300 });
    fc.assert(fc.property(installations({ min: 12, max: 12 }), fc.nat(9999), compare), { numRuns: 40 });
    // The comparison means little where there is nothing to compare.
    expect(sizes.filter((size) => size > 1).length).toBeGreaterThan(15);
  });

  test("really cut, in every mode and position, and cannot spare a device", () => {
    let cutsSeen = 0;
    fc.assert(
      fc.property(installations({ min: 2, max: 12 }), fc.nat(9999), (text, number) => {
        const { house, slow } = everything(text);
        const { circuit } = house;
        const { cuts, staysLive, terminals } = isolate(circuit, targetOf(house, number));
        const always = new Set(staysLive.map(({ terminal }) => terminal));
        const targets = terminals.filter((terminal) => !always.has(terminal));
        if (targets.length === 0) return;
        for (const cut of cuts) {
          cutsSeen++;
          for (const positions of allPositions(slow.changeovers))
            for (const mode of modes)
              expect(isFed(circuit, { ...mode, open: new Set(cut), positions }, targets)).toBe(false);
          for (const spared of cut) {
            const rest = new Set(cut.filter((device) => device !== spared));
            const fed = allPositions(slow.changeovers).some((positions) =>
              isFed(circuit, { ...byDay, open: rest, positions }, targets),
            );
            expect(fed).toBe(true);
          }
        }
      }),
      { numRuns: 200 },
    );
    expect(cutsSeen).toBeGreaterThan(100);
  });

  test("do not exist for what stays live with every device open", () => {
    fc.assert(
      fc.property(installations({ min: 0, max: 8 }), fc.nat(9999), (text, number) => {
        const { house, slow } = everything(text);
        const item = targetOf(house, number);
        const every = (1 << slow.devices.length) - 1;
        const reached = new Set<string>();
        for (let position = 0; position < 1 << slow.changeovers.length; position++)
          slow.sources.forEach((_, source) => {
            for (const terminal of slow.reached(source, every, position)) reached.add(slow.terminals[terminal]!);
          });
        const { staysLive, terminals } = isolate(house.circuit, item);
        const stated = new Set(staysLive.map(({ terminal }) => terminal.id));
        expect([...stated].sort()).toEqual(
          terminals
            .map(({ id }) => id)
            .filter((id) => reached.has(id))
            .sort(),
        );
        for (const { terminal } of cannotBeIsolated(house.circuit, item)) expect(stated).toContain(terminal.id);
      }),
      { numRuns: 150 },
    );
  });
});
