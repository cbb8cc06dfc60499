import { asWritten } from "./as-written.js";
import type {
  Block,
  ItemDeclaration,
  Mention,
  PartDeclaration,
  Property,
  ReadingDeclaration,
  RunDeclaration,
} from "./model.js";
import type { KindRow } from "./schema/index.js";

/** A part with its row of the schema. */
export interface Part {
  readonly is: "part";
  readonly name: string;
  readonly kind: string;
  readonly row?: KindRow;
  readonly declaration: PartDeclaration;
}

/** One place where an item's properties are written: the item itself, then the part it is. */
export interface Layer {
  readonly label: string;
  readonly block: Block;
}

/** One thing on the wall, or one port of it. */
export interface Item {
  readonly is: "item";
  /** Dotted path, unique in the design: `Q1`, `INV.pv1`, `CU.R1.K1`. */
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly row?: KindRow;
  readonly declaration: ItemDeclaration;
  readonly part?: Part;
  /** How many units the item is (modules of a string); 1 where no count is written. */
  readonly count: number;
  readonly layers: readonly Layer[];
  readonly parent?: Item;
  readonly children: Item[];
}

export interface Run {
  readonly is: "run";
  readonly id: string;
  readonly kind: "run";
  readonly row: KindRow;
  readonly declaration: RunDeclaration;
  readonly cable?: Part;
  readonly layers: readonly Layer[];
  readonly from?: End;
  readonly to?: End;
}

/** One end of a run. */
export interface End {
  readonly item: Item;
  /** `in`, `out`, or empty where the item has one unnamed terminal, as a port has. */
  readonly terminal: string;
  readonly mention: Mention;
}

/** What was measured on one thing on one day. */
export interface Reading {
  readonly is: "reading";
  /** As it is written: `measured S1 on 2026-06-12`. */
  readonly id: string;
  readonly kind: "measured";
  readonly row: KindRow;
  readonly declaration: ReadingDeclaration;
  readonly layers: readonly Layer[];
  /** What it was measured on. */
  readonly target: Item | Run;
}

export type Thing = Item | Run | Part | Reading;

/** The block that states a property of a thing, nearest first. */
export function findProperty(thing: Thing, name: string): { property: Property; label: string } | undefined {
  if (thing.is === "part") {
    const property = inBlock(thing.declaration, name);
    return property && { property, label: thing.name };
  }
  for (const { block, label } of thing.layers) {
    const property = inBlock(block, name);
    if (property) return { property, label };
  }
  return undefined;
}

function inBlock(block: Block, name: string): Property | undefined {
  for (const property of block.properties) if (property.name === name) return property;
  return undefined;
}

/** Whether a thing names a part that does not exist: what its sheet would say is then not known. */
export function lacksPart(thing: Thing): boolean {
  return thing.is === "item" && thing.part === undefined && thing.declaration.part !== undefined;
}

/** Whether an item is written in the design itself: what a part's sheet holds is a fact, no choice. */
export function isWrittenHere(item: Item): boolean {
  const { parent, declaration } = item;
  return !parent || (asWritten(parent.declaration).nested.includes(asWritten(declaration)) && isWrittenHere(parent));
}

/** The item whose part brings another: the inverter of a tracker; the item itself where it is written in the design. */
export function bearerOf(item: Item): Item {
  return isWrittenHere(item) || !item.parent ? item : bearerOf(item.parent);
}
