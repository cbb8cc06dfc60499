import type { Zone } from "../circuit/array.js";
import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import { fact } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";

/** A device with the terminals that runs land on. */
export interface TerminalSubject {
  readonly device: Item;
  readonly terminals: readonly LoadedTerminal[];
}
export interface LoadedTerminal {
  readonly terminal: Terminal;
  readonly runs: readonly Run[];
}

/** Devices of an array whose terminals take bare conductors; strings and trackers have plugs, and rules of their own. */
const arrayKinds = new Set(["isolator", "fuse", "combiner", "spd"]);

export function* terminalsOfArrays(zone: Zone): Generator<TerminalSubject> {
  const seen = new Set<Terminal>();
  for (const array of zone.arrays)
    yield* byDevice(
      array.terminals.filter(({ item }) => arrayKinds.has(item.kind)),
      seen,
    );
}

const plantKinds = new Set([
  "isolator",
  "breaker",
  "rcbo",
  "rcd",
  "fuse",
  "meter",
  "spd",
  "changeover",
  "terminal-block",
  "board",
]);

/** Devices of the a.c. side and of the batteries' leads; ports and batteries where there is something to look at. */
export function* terminalsOfPlant({ trees, batteries }: Plant): Generator<TerminalSubject> {
  const terminals = new Set<Terminal>();
  for (const { order } of trees) for (const terminal of order) terminals.add(terminal);
  for (const { path } of batteries) for (const { from, to } of path?.hops ?? []) terminals.add(from).add(to);
  for (const subject of byDevice([...terminals], new Set()))
    if (plantKinds.has(subject.device.kind) || isWorthALook(subject)) yield subject;
}

function isWorthALook({ device, terminals }: TerminalSubject): boolean {
  return (
    terminals.some(({ runs }) => runs.length > 1) ||
    fact(device, "conductors-per-terminal") !== undefined ||
    fact(device, "terminal-area") !== undefined
  );
}

/** Terminals that runs land on, together by device; what is seen already is left out. */
function byDevice(terminals: readonly Terminal[], seen: Set<Terminal>): TerminalSubject[] {
  const found = new Map<Item, LoadedTerminal[]>();
  for (const terminal of terminals) {
    if (seen.has(terminal)) continue;
    seen.add(terminal);
    const runs: Run[] = [];
    for (const { by } of terminal.links) if (by.is === "run") runs.push(by);
    if (runs.length === 0) continue;
    const own = found.get(terminal.item);
    if (own) own.push({ terminal, runs });
    else found.set(terminal.item, [{ terminal, runs }]);
  }
  return [...found].map(([device, loaded]) => ({ device, terminals: loaded }));
}
