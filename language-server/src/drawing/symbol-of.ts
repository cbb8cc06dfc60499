import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { SymbolName } from "./diagram.js";

const byKind: Readonly<Record<string, SymbolName>> = {
  string: "array",
  isolator: "isolator",
  fuse: "fuse",
  breaker: "breaker",
  rcd: "rcd",
  rcbo: "rcbo",
  spd: "spd",
  inverter: "inverter",
  battery: "battery",
  meter: "meter",
  earthing: "earth",
  electrode: "electrode",
  load: "load",
  changeover: "changeover",
  supply: "supply",
  generator: "generator",
  "terminal-block": "terminal-block",
  board: "board",
  combiner: "combiner",
};

export function symbolOf(item: Item): SymbolName {
  // A fuse in a carrier that can be drawn is one still: its label says that it isolates.
  return byKind[item.kind] ?? "unknown";
}

/** Kinds that are written into something else's label and have no symbol. */
export function isDrawn({ kind }: Item): boolean {
  return kind !== "site" && kind !== "ct" && kind !== "link";
}

/** What is clipped on a run, by the run's name. */
export function transformersOf(items: readonly Item[]): ReadonlyMap<string, string[]> {
  const found = new Map<string, string[]>();
  for (const item of items) {
    const around = item.kind === "ct" ? wordOf(item, "around") : undefined;
    if (around === undefined) continue;
    const arrow = wordOf(item, "arrow")?.replace("-", " ");
    const reader = wordOf(item, "read-by");
    const line = `${item.name}: CT${arrow ? `, arrow ${arrow}` : ""}${reader ? `, read by ${reader}` : ""}`;
    found.set(around, [...(found.get(around) ?? []), line]);
  }
  return found;
}

/** Neutral–earth links, by the name of the item that they stand in. */
export function linksOf(items: readonly Item[]): ReadonlyMap<string, string[]> {
  const found = new Map<string, string[]>();
  const add = (item: Item, outer?: Item): void => {
    if (item.kind === "link") {
      const at = wordOf(item, "at")?.split(".")[0] ?? outer?.id;
      const closed = wordOf(item, "closed-in");
      const line = `${item.name}: N–PE link${closed ? `, closed in ${closed === "both" ? "both modes" : closed}` : ""}`;
      if (at !== undefined) found.set(at, [...(found.get(at) ?? []), line]);
    }
    for (const child of item.children) add(child, outer ?? item);
  };
  for (const item of items) add(item);
  return found;
}
