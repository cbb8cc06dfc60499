import { type Circuit, otherEnd, type Terminal } from "../circuit/circuit.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Current } from "./diagram.js";

const dcSources = new Set(["string", "tracker", "battery", "combiner"]);
const acSources = new Set(["supply", "generator", "ac", "backup", "board", "load"]);
const earths = new Set(["earthing", "electrode"]);

/** What flows at each terminal: told by what conductors join it to, else by what the device says of itself. */
export function currentsOf(circuit: Circuit): (terminal: Terminal) => Exclude<Current, "both"> {
  const known = new Map<Terminal, Exclude<Current, "both">>();
  for (const start of circuit.terminals.values()) {
    if (known.has(start)) continue;
    const region = joined(start, known);
    const current = currentOf(region);
    for (const terminal of region) known.set(terminal, current);
  }
  return (terminal) => known.get(terminal) ?? "ac";
}

function joined(start: Terminal, known: ReadonlyMap<Terminal, unknown>): Terminal[] {
  const region = [start];
  const seen = new Set(region);
  for (const terminal of region)
    for (const link of terminal.links) {
      const next = otherEnd(link, terminal);
      // A conductor to earth carries neither.
      if (seen.has(next) || known.has(next) || isEarth(next) !== isEarth(start)) continue;
      seen.add(next);
      region.push(next);
    }
  return region;
}

export function isEarth({ item, name }: Terminal): boolean {
  return earths.has(item.kind) || name === "earth";
}

function currentOf(region: readonly Terminal[]): Exclude<Current, "both"> {
  if (region.some(isEarth)) return "earth";
  const kinds = region.map(({ item }) => item.kind);
  if (kinds.some((kind) => acSources.has(kind))) return "ac";
  if (kinds.some((kind) => dcSources.has(kind))) return "dc";
  return region.some(({ item }) => saysDc(item)) ? "dc" : "ac";
}

function saysDc(item: Item): boolean {
  return wordOf(item, "supply") === "dc";
}
