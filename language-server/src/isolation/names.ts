import type { Assessment } from "../assessment/assessment.js";
import type { Circuit, Terminal } from "../circuit/circuit.js";
import type { Item } from "../design/things.js";

/** Terminals of each item, also those that no run can name (the cells of a battery); earth terminals carry no source. */
export function terminalsByItem(circuit: Circuit): Map<Item, Terminal[]> {
  const found = new Map<Item, Terminal[]>();
  for (const terminal of circuit.terminals.values()) {
    if (terminal.name === "earth") continue;
    const own = found.get(terminal.item);
    if (own) own.push(terminal);
    else found.set(terminal.item, [terminal]);
  }
  return found;
}

/**
 * The shortest names for some terminals with the runs between them, in the order of the text: an item that is there
 * with all it has by its own name, a run by its name where its ends are.
 */
export function namesOf({ design, circuit }: Assessment, terminals: readonly Terminal[]): string[] {
  const wanted = new Set(terminals);
  const byItem = terminalsByItem(circuit);
  const names: string[] = [];
  for (const item of design.items) nameItem(item, wanted, byItem, names);
  const runs = new Set<string>();
  for (const { links } of terminals) for (const { by } of links) if (by.is === "run") runs.add(by.id);
  for (const { id } of design.runs) if (runs.has(id)) names.push(id);
  return names;
}

function nameItem(
  item: Item,
  wanted: ReadonlySet<Terminal>,
  byItem: ReadonlyMap<Item, readonly Terminal[]>,
  names: string[],
): void {
  const all = withNested(item, byItem);
  const here = all.filter((terminal) => wanted.has(terminal));
  if (here.length === 0) return;
  if (here.length === all.length) {
    names.push(item.id);
    return;
  }
  for (const terminal of byItem.get(item) ?? []) if (wanted.has(terminal)) names.push(terminal.id);
  for (const child of item.children) nameItem(child, wanted, byItem, names);
}

/** Terminals of an item and its insides that are joined to anything. */
function withNested(item: Item, byItem: ReadonlyMap<Item, readonly Terminal[]>): Terminal[] {
  const own = (byItem.get(item) ?? []).filter(({ links, name }) => links.length > 0 || name === "" || name === "cells");
  return [...own, ...item.children.flatMap((child) => withNested(child, byItem))];
}
