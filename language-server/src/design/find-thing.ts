import type { Design } from "./design.js";
import type { ItemDeclaration, PartDeclaration, RunDeclaration } from "./model.js";
import { type KindRow, kindRow, partRow } from "./schema/index.js";
import { runRow } from "./schema/wiring.js";
import { nearest } from "./suggest.js";
import type { Item, Thing } from "./things.js";

export type Changeable = ItemDeclaration | RunDeclaration | PartDeclaration;

/** What somebody means by a name. */
export interface Target {
  /** As the design knows it: `INV.pv1`, also where only `pv1` was written. */
  readonly id: string;
  readonly row?: KindRow;
  /** The declaration at the top level that holds it, then each inside the one before; its own is the last. */
  readonly chain: readonly Changeable[];
  /** The thing itself; a block of a part's sheet is none. */
  readonly thing?: Thing;
}

/** The item, run, part, or block of a part, that a dotted name means; the end of a message where it means none. */
export function findTarget(design: Design, path: readonly string[]): Target | string {
  const name = path.join(".");
  const run = design.runs.find(({ id }) => id === name);
  if (run) return { id: run.id, row: runRow, chain: [run.declaration], thing: run };
  const resolved = design.names.resolve({ path });
  if (resolved.is === "item" && resolved.terminal === "") {
    const { item } = resolved;
    return { id: item.id, row: item.row, chain: chainOf(item), thing: item };
  }
  if (resolved.is === "ambiguous")
    return `${name} may be ${resolved.items.map(({ id }) => id).join(" or ")}. Write the whole path.`;
  const onSheet = findOnSheet(design, path);
  if (onSheet) return onSheet;
  if (resolved.is === "item") return `${name} is a terminal of ${resolved.item.id}. Name the item.`;
  return `There is no item, run or part ${name}.${didYouMean(design, path)}`;
}

function chainOf(item: Item): ItemDeclaration[] {
  return item.parent ? [...chainOf(item.parent), item.declaration] : [item.declaration];
}

function findOnSheet(design: Design, [first = "", ...rest]: readonly string[]): Target | undefined {
  const part = design.parts.get(first);
  if (!part) return undefined;
  const chain: Changeable[] = [part.declaration];
  let row = partRow(part.kind);
  let outer: PartDeclaration | ItemDeclaration = part.declaration;
  for (const segment of rest) {
    const inner: ItemDeclaration | undefined = outer.nested.find(({ name }) => name === segment);
    if (!inner) return undefined;
    row = kindRow(inner.kind, outer.kind);
    chain.push(inner);
    outer = inner;
  }
  return { id: [first, ...rest].join("."), row, chain, ...(rest.length === 0 && { thing: part }) };
}

function didYouMean({ names, runs, parts }: Design, path: readonly string[]): string {
  const known = [...names.top.keys(), ...runs.map(({ id }) => id), ...parts.keys()];
  for (const item of names.top.values()) addNested(item, known);
  const near = nearest(path.join("."), known);
  return near === undefined ? "" : ` Did you mean ${near}?`;
}

function addNested(item: Item, known: string[]): void {
  for (const child of item.children) {
    known.push(child.id);
    addNested(child, known);
  }
}
