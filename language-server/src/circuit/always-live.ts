import type { Item } from "../design/things.js";
import { type Circuit, type Terminal, terminalsOf } from "./circuit.js";
import { openingDevices } from "./cut-graph.js";
import { type Arrival, traceLive } from "./live.js";
import { allPositions } from "./modes.js";

/**
 * What is live whatever is opened: by day, with the grid, every device open that may be relied upon, the changeovers in
 * every position. The charge of capacitors is left out: it goes, after a wait.
 */
export function liveWhateverIsOpened(circuit: Circuit): ReadonlyMap<Terminal, readonly Arrival[]> {
  let found = memory.get(circuit);
  if (!found) {
    found = trace(circuit);
    memory.set(circuit, found);
  }
  return found;
}

const memory = new WeakMap<Circuit, ReadonlyMap<Terminal, readonly Arrival[]>>();

function trace(circuit: Circuit): Map<Terminal, readonly Arrival[]> {
  const open = openingDevices(circuit);
  // One that opens has no position left; only those that do not open matter.
  const changeovers = changeoversOf(circuit).filter((changeover) => !open.has(changeover));
  const found = new Map<Terminal, readonly Arrival[]>();
  for (const positions of allPositions(changeovers)) {
    const { arrivals } = traceLive(circuit, { light: "day", supply: "grid", open, positions });
    // Terminals that conductors join share one list, which is gone through once.
    const lasting = new Map<readonly Arrival[], readonly Arrival[]>();
    for (const [terminal, all] of arrivals) {
      let own = lasting.get(all);
      if (!own) {
        own = all.filter(({ through }) => through !== "stored");
        lasting.set(all, own);
      }
      const before = found.get(terminal);
      if (own.length > 0) found.set(terminal, before ? bySource([...before, ...own]) : own);
    }
  }
  return found;
}

/** Each source once; what an inverter would end by itself gives way to what nothing ends. */
function bySource(arrivals: readonly Arrival[]): Arrival[] {
  const found = new Map<Arrival["source"], Arrival>();
  for (const arrival of arrivals)
    if (!found.has(arrival.source) || !arrival.untilDisconnects) found.set(arrival.source, arrival);
  return [...found.values()];
}

export function changeoversOf(circuit: Circuit): Item[] {
  return [...new Set(circuit.links.flatMap(({ by, position }) => (position && by.is === "item" ? [by] : [])))];
}

/** One terminal of an item with a source that no device parts it from. */
export interface StaysLive {
  readonly terminal: Terminal;
  readonly arrival: Arrival;
}

/**
 * Which sources no set of devices keeps off an item, or off some of its terminals. An inverter that disconnects by itself
 * when its grid is opened is no source here, though the terminal is not isolated from it either.
 */
export function cannotBeIsolated(
  circuit: Circuit,
  item: Item,
  terminals: readonly Terminal[] = terminalsOf(circuit, item),
): StaysLive[] {
  const all = liveWhateverIsOpened(circuit);
  const found: StaysLive[] = [];
  for (const terminal of terminals)
    for (const arrival of all.get(terminal) ?? []) if (!arrival.untilDisconnects) found.push({ terminal, arrival });
  return found;
}
