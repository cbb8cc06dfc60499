import type { ItemDeclaration, Mention } from "./model.js";
import { kindRow } from "./schema/index.js";
import type { Item, Layer, Part } from "./things.js";

/**
 * Makes the item of a declaration with everything nested in it: what its own braces hold, and what its part brings
 * (the trackers of an inverter). An own nested block of the same name lies over the part's.
 */
export function makeItem(
  declaration: ItemDeclaration,
  partOf: (mention: Mention) => Part | undefined,
  parent?: Item,
  beneath?: { readonly declaration: ItemDeclaration; readonly label: string },
): Item {
  const name = declaration.name;
  const id = parent ? `${parent.id}.${name}` : name;
  const part = declaration.part && partOf(declaration.part);
  const layers: Layer[] = [{ label: id, block: declaration }];
  if (beneath) layers.push({ label: beneath.label, block: beneath.declaration });
  if (part) layers.push({ label: part.name, block: part.declaration });
  const item: Item = {
    is: "item",
    id,
    name,
    kind: declaration.kind,
    row: kindRow(declaration.kind, parent?.kind),
    declaration,
    part,
    count: declaration.count?.value ?? 1,
    layers,
    parent,
    children: [],
  };
  const inherited = part ? part.declaration.nested : [];
  for (const nested of declaration.nested) {
    const same = inherited.find((candidate) => candidate.name === nested.name && candidate.kind === nested.kind);
    const under = same && part ? { declaration: same, label: part.name } : undefined;
    item.children.push(makeItem(nested, partOf, item, under));
  }
  if (part) {
    for (const nested of inherited) {
      if (declaration.nested.some((own) => own.name === nested.name && own.kind === nested.kind)) continue;
      item.children.push(makeItem(nested, partOf, item));
    }
  }
  return item;
}
