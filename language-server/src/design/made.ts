import { makeItem } from "./items.js";
import type { ItemDeclaration, Mention, PartDeclaration, RunDeclaration } from "./model.js";
import type { Names } from "./names.js";
import { partRow } from "./schema/index.js";
import { runRow } from "./schema/wiring.js";
import type { End, Item, Part, Run } from "./things.js";

/*
 * Things are made once and stay the same objects from one build to the next, for as long as their declaration and all
 * that it names stay the same. An edit then makes a handful of things anew, and whoever compares by identity sees
 * which ones.
 */

const parts = new WeakMap<PartDeclaration, Part>();

export function partOf(declaration: PartDeclaration): Part {
  let part = parts.get(declaration);
  if (!part) {
    const { name, kind } = declaration;
    part = { is: "part", name, kind, row: partRow(kind), declaration };
    parts.set(declaration, part);
  }
  return part;
}

interface MadeItem {
  readonly item: Item;
  /** Every part that was looked up for it, and what was found. */
  readonly uses: readonly { readonly mention: Mention; readonly part: Part | undefined }[];
}
const items = new WeakMap<ItemDeclaration, MadeItem>();

/** The item of a declaration, and the parts it and what is nested in it name. */
export function itemOf(declaration: ItemDeclaration, names: Names): MadeItem {
  const known = items.get(declaration);
  if (known?.uses.every(({ mention, part }) => names.part(mention) === part)) return known;
  const uses: { mention: Mention; part: Part | undefined }[] = [];
  const item = makeItem(declaration, (mention) => {
    const part = names.part(mention);
    uses.push({ mention, part });
    return part;
  });
  const made = { item, uses };
  items.set(declaration, made);
  return made;
}

const runs = new WeakMap<RunDeclaration, Run>();

/** The run of a declaration between two ends, of a cable. */
export function runOf(
  declaration: RunDeclaration,
  cable: Part | undefined,
  from: End | undefined,
  to: End | undefined,
): Run {
  const known = runs.get(declaration);
  if (known && known.cable === cable && sameEnd(known.from, from) && sameEnd(known.to, to)) return known;
  const run: Run = {
    is: "run",
    id: declaration.name,
    kind: "run",
    row: runRow,
    declaration,
    cable,
    layers: [{ label: declaration.name, block: declaration }],
    from,
    to,
  };
  runs.set(declaration, run);
  return run;
}

function sameEnd(a: End | undefined, b: End | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && a.item === b.item && a.terminal === b.terminal);
}
