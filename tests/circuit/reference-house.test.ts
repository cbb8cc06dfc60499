import { describe, expect, test } from "vitest";
import { cannotBeIsolated } from "../../language-server/src/circuit/always-live.js";
import { isolate } from "../../language-server/src/circuit/cuts.js";
import { isolationText } from "../../language-server/src/circuit/isolation-text.js";
import { type Arrival, traceLive } from "../../language-server/src/circuit/live.js";
import { arrivalText } from "../../language-server/src/circuit/live-text.js";
import type { Mode } from "../../language-server/src/circuit/modes.js";
import { plants } from "../../language-server/src/circuit/plants.js";
import { ids, wired } from "./from-text.js";
import { referenceHouse } from "./reference-house.js";

// The questions are those of the acceptance list; the answers there name the same parts and sources.
const house = wired(referenceHouse);
const { circuit } = house;

const day: Mode = { light: "day", supply: "grid" };
const night: Mode = { light: "night", supply: "grid" };
const island: Mode = { light: "day", supply: "island" };

/** Sources at a terminal with some devices open, in words; `+` for stored charge. */
function at(terminal: string, open: readonly string[], mode: Mode = day): string[] {
  const { arrivals } = traceLive(circuit, { ...mode, open: new Set(open.map((name) => house.item(name))) });
  return (arrivals.get(house.terminal(terminal)) ?? []).map(short);
}
function short({ source, through, untilDisconnects, mayReturn }: Arrival): string {
  if (through === "stored") return "charge";
  return `${source.id}${through === "converter" ? " through INV" : ""}${untilDisconnects ? " until it disconnects" : ""}${mayReturn ? " may return" : ""}`;
}

describe("what stays live if I open Q2?", () => {
  test("by day the roof cable up to Q2, from string B and nothing else", () => {
    expect(at("B.out", ["Q2"])).toEqual(["B"]);
    expect(at("Q2.in", ["Q2"])).toEqual(["B"]);
    expect(at("Q2.in", ["Q2"], night)).toEqual([]);
  });
  test("the inverter side of Q2 is to be treated as live: string A, battery, grid and charge reach it through INV", () => {
    expect(at("Q2.out", ["Q2"])).toEqual(["GRID through INV", "A through INV", "BAT through INV", "charge"]);
    expect(at("Q2.out", ["Q2"], night)).toEqual(["GRID through INV", "BAT through INV", "charge"]);
    expect(at("Q2.out", ["Q2"], island)).toEqual(["A through INV", "BAT through INV", "charge"]);
  });
  test("the surge device on the dead side of Q2 is no deader than that side", () => {
    expect(at("U2.in", ["Q2"])).toEqual(at("Q2.out", ["Q2"]));
  });
});

describe("which devices to work inside INV?", () => {
  const isolation = isolate(circuit, house.item("INV"));
  test("Q1, Q2, Q3 and Q4, or in place of Q4 the way Q5 or the main switch Q6", () => {
    expect(isolation.cuts.map(ids)).toEqual([
      ["Q1", "Q2", "Q3", "Q4"],
      ["Q1", "Q2", "Q3", "OLD.Q5"],
      ["Q1", "Q2", "Q3", "OLD.Q6"],
    ]);
    expect(isolation.complete).toBe(true);
  });
  test("all five ports are parted from the rest by Q1, Q2, Q3, Q4 and the backup board's Q7", () => {
    expect(ids(isolation.boundary.map(({ device }) => device)).sort()).toEqual(["NEW.Q7", "Q1", "Q2", "Q3", "Q4"]);
    expect(isolation.terminals).toHaveLength(5);
  });
  test("then wait: the maker's figure is not stated, so nobody is told a time", () => {
    expect(isolation.waits).toEqual([{ inverter: house.item("INV"), wait: undefined }]);
    const stated = wired(
      referenceHouse.replace("galvanic-separation: no", "galvanic-separation: no  discharge-wait: 5 min"),
    );
    expect(isolate(stated.circuit, stated.item("INV")).waits[0]?.wait).toMatchObject({ value: 300, dimension: "time" });
  });
  test("the roof cables and the battery's terminals stay live", () => {
    const open = ["Q1", "Q2", "Q3", "Q4", "Q7"];
    expect(at("Q1.in", open)).toEqual(["A"]);
    expect(at("Q2.in", open)).toEqual(["B"]);
    expect(at("BAT.out", open)).toEqual(["BAT"]);
    expect(at("Q3.in", open)).toEqual(["BAT"]);
    for (const port of ["pv1", "pv2", "battery", "ac", "backup"]) expect(at(`INV.${port}`, open)).toEqual(["charge"]);
  });
});

describe("main switch Q6 off: what is live?", () => {
  test("its supply side", () => expect(at("OLD.Q6.in", ["Q6"])).toEqual(["GRID"]));
  test("the old bar through Q5, until the inverter disconnects", () => {
    expect(at("OLD.bar", ["Q6"])).toEqual([
      "A through INV until it disconnects",
      "B through INV until it disconnects",
      "BAT through INV until it disconnects",
    ]);
    expect(at("OLD.bar", ["Q6", "Q5"])).toEqual([]);
  });
  test("the backup board, in grid mode and in an island", () => {
    expect(at("NEW.bar", ["Q6"])).toEqual(["A through INV", "B through INV", "BAT through INV"]);
    expect(at("NEW.bar", ["Q6"], island)).toEqual(["A through INV", "B through INV", "BAT through INV"]);
    expect(at("NEW.bar", ["Q6", "Q7"])).toEqual([]);
  });
  test("all of the d.c. side", () => {
    expect(at("INV.pv1", ["Q6"])).toContain("A");
    expect(at("INV.battery", ["Q6"])).toContain("BAT");
  });
  test("in an island the supply's side is dead, and may return at any time", () => {
    expect(at("OLD.bar", [], island)).toEqual(["GRID may return"]);
    expect(at("INV.ac", [], island)).toEqual(["GRID may return", "charge"]);
    expect(at("OLD.bar", ["Q6"], island)).toEqual([]);
  });
});

describe("do I need an earth electrode, and where is neutral tied to earth?", () => {
  const [plant] = plants(house.design, circuit);
  test("exactly one link with the grid, the supplier's; exactly one in an island, K1", () => {
    expect(plant?.neutralEarth.grid).toEqual([{ supply: house.item("GRID"), closed: "yes" }]);
    expect(plant?.neutralEarth.island).toEqual([{ link: house.item("K1"), closed: "yes" }]);
    expect(ids(plant?.electrodes ?? [])).toEqual(["E2"]);
  });
  test("a grid switch that leaves the neutral joined brings the supplier's link into the island", () => {
    const joined = wired(referenceHouse.replace("disconnects-all-poles: yes", "disconnects-all-poles: no"));
    const [other] = plants(joined.design, joined.circuit);
    expect(other?.neutralEarth.island.map(({ link, supply, closed }) => [link?.id ?? supply?.id, closed])).toEqual([
      ["K1", "yes"],
      ["GRID", "yes"],
    ]);
  });
  test("not stated whether it does: perhaps, naming the property", () => {
    const unsaid = wired(referenceHouse.replace("disconnects-all-poles: yes", ""));
    const [other] = plants(unsaid.design, unsaid.circuit);
    expect(other?.neutralEarth.island[1]).toMatchObject({
      closed: "perhaps",
      missing: { thing: unsaid.item("INV.ac"), property: "disconnects-all-poles" },
    });
  });
});

describe("what runs in a power cut?", () => {
  const [plant] = plants(house.design, circuit);
  test("the ways of the backup board, behind Q7", () => {
    const backup = plant?.inverters[0]?.backup;
    expect(ids(backup?.boards ?? [])).toEqual(["NEW"]);
    expect(backup?.circuits.map(({ device, servesText }) => [device.id, servesText])).toEqual([
      ["NEW.K4", undefined],
      ["NEW.K5", undefined],
    ]);
    expect(ids(backup?.loads ?? [])).toEqual(["FREEZER", "LIGHTS"]);
    expect(plant?.boards[1]?.mainSwitches).toEqual([house.item("Q7")]);
  });
});

describe("what is said of it", () => {
  const words = (terminal: string, open: readonly string[], mode: Mode = day): string[] => {
    const { arrivals } = traceLive(circuit, { ...mode, open: new Set(open.map((name) => house.item(name))) });
    return (arrivals.get(house.terminal(terminal)) ?? []).map(arrivalText);
  };
  test("every arrival names its source, the inverter it came through, and what would end it", () => {
    expect(words("OLD.bar", ["Q6"])[0]).toBe("A in any light through INV, until INV disconnects");
    expect(words("OLD.bar", [], island)).toEqual(["GRID, dead now, may return at any time"]);
    expect(words("INV.ac", ["Q1", "Q2", "Q3", "Q4"])).toEqual([
      "charge in the capacitors of INV (discharge-wait not stated: its maker's sheet says how long)",
    ]);
  });
  test("nothing about INV is beyond isolation, and the string's own cable is", () => {
    expect(cannotBeIsolated(circuit, house.item("INV"))).toEqual([]);
    expect(
      cannotBeIsolated(circuit, house.item("Q2")).map(({ terminal, arrival }) => [terminal.id, short(arrival)]),
    ).toEqual([["Q2.in", "B"]]);
  });
  test("how to isolate INV, and what is still live then", () => {
    expect(isolationText(circuit, isolate(circuit, house.item("INV")))).toEqual({
      open: "Open Q1, Q2, Q3 and Q4: INV is dead, if it is wired as written. Prove it dead.",
      instead: ["Q1, Q2, Q3 and OLD.Q5", "Q1, Q2, Q3 and OLD.Q6"],
      wait: ["INV holds charge, and discharge-wait is not stated: see its maker's sheet before touching anything."],
      stillLive: ["Q1.in, from A in any light", "Q2.in, from B in any light", "Q3.in, from BAT", "Q4.out, from GRID"],
      besides: ["NEW.Q7"],
      notCounted: ["OLD.RCD2.K2: it opens 1 of 2 live conductors", "OLD.RCD2.K3: it opens 1 of 2 live conductors"],
    });
  });
  test("what reaches one terminal by one way is said in one sentence", () => {
    const two = wired(`part M is module { power: 400 W }
part C is cable { conductor-area: 4 mm2 }
string A is 9 x M
string B is 9 x M
fuse F
run W1 from A to F: 9 m of C
run W2 from B to F: 9 m of C
`);
    expect(isolationText(two.circuit, isolate(two.circuit, two.item("F"))).stillLive).toEqual([
      "F.in, from A and B in any light",
      "F.out, from A and B in any light",
    ]);
  });
  test("a battery behind its own isolator is not called dead: its cells stay live", () => {
    const stack = wired(`part B is battery { built-in-isolator: yes }
part C is cable { conductor-area: 25 mm2 }
part P is inverter {
    battery { voltage-range: 80..480 V }
    ac { phases: 1 }
}
battery BAT is 2 x B
inverter INV is P
supply GRID { phases: 1 }
run W1 from BAT to INV.battery: 2 m of C
isolator Q1 { supply: ac  poles: 2 }
run W2 from GRID to Q1: 2 m of C
run W3 from Q1 to INV.ac: 2 m of C
`);
    const said = isolationText(stack.circuit, isolate(stack.circuit, stack.item("BAT")));
    expect(said.open).toBe(
      "Open BAT's own isolator and Q1: nothing reaches BAT but what is named as still live, if it is wired as written. Prove the rest dead.",
    );
    expect(said.stillLive).toEqual(["BAT.cells, from BAT", "Q1.in, from GRID"]);
  });
  test("what no device can do is said as well", () => {
    expect(isolationText(circuit, isolate(circuit, house.item("BAT")))).toMatchObject({
      open: "Open Q3: nothing reaches BAT but what is named as still live, if it is wired as written. Prove the rest dead.",
      stillLive: [
        "BAT.out, from BAT",
        "Q3.in, from BAT",
        "Q3.out, from GRID through INV; from A and B in any light through INV",
      ],
    });
  });
});
