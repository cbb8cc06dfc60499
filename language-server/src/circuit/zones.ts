import type { Item } from "../design/things.js";
import type { PvArray, Zone } from "./array.js";
import { traceArray } from "./array-trace.js";
import { type Circuit, otherEnd, type Terminal } from "./circuit.js";

/**
 * Cuts the array side of a circuit into zones: everything that hangs on the trackers of one inverter, and each piece
 * that reaches no inverter by itself. An inverter's inside is never crossed, so what happens on one inverter's roof
 * cannot change what is computed for another.
 */
export function arrayZones(circuit: Circuit): Zone[] {
  const byInverter = new Map<Item, PvArray[]>();
  const loose: Zone[] = [];
  const seen = new Set<Terminal>();
  for (const start of circuit.terminals.values()) {
    if (seen.has(start) || !(start.item.kind === "string" || start.item.kind === "tracker")) continue;
    const region = connected(start, seen);
    const trackers = region.filter(({ item }) => item.kind === "tracker");
    if (trackers.length === 0) {
      const array = traceArray(region, undefined);
      loose.push({ id: array.id, arrays: [array] });
      continue;
    }
    for (const tracker of trackers) {
      const inverter = tracker.item.parent;
      if (!inverter) continue;
      const arrays = byInverter.get(inverter) ?? [];
      arrays.push(traceArray(region, tracker));
      byInverter.set(inverter, arrays);
    }
  }
  const zones: Zone[] = [...byInverter].map(([inverter, arrays]) => ({ id: inverter.id, inverter, arrays }));
  return zones.concat(loose);
}

/** Terminals that conductors join to a start, through closed devices. */
function connected(start: Terminal, seen: Set<Terminal>): Terminal[] {
  const region = [start];
  seen.add(start);
  for (let index = 0; index < region.length; index++) {
    const terminal = region[index]!;
    for (const link of terminal.links) {
      const next = otherEnd(link, terminal);
      if (seen.has(next)) continue;
      seen.add(next);
      region.push(next);
    }
  }
  return region;
}
