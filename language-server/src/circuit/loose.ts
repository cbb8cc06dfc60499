import type { Design } from "../design/design.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";

/** Items of a kind at any depth, in the order of the text. */
export function allOfKind(items: readonly Item[], kind: string): Item[] {
  return items.flatMap((item) => [...(item.kind === kind ? [item] : []), ...allOfKind(item.children, kind)]);
}

/**
 * Neutral–earth links and current transformers have no terminal: they belong to the piece of wiring that holds what
 * they are nested in, or point at. Undefined where they point at nothing.
 */
export function anchorOf(item: Item, design: Design): Item | undefined {
  if (item.parent) return item.parent;
  const named = wordOf(item, item.kind === "ct" ? "around" : "at");
  if (named === undefined) return undefined;
  const run = item.kind === "ct" ? design.runs.find(({ id }) => id === named) : undefined;
  if (run) return run.from?.item ?? run.to?.item;
  const resolved = design.names.resolve({ path: named.split(".") });
  return resolved.is === "item" ? resolved.item : undefined;
}
