import { withArticle } from "./article.js";
import type { Mention, Problem } from "./model.js";
import type { Item, Part } from "./things.js";

/** A name that an earlier declaration has; the later one is left out. */
export function duplicateName(
  sort: string,
  declaration: { readonly name: string; readonly kind?: string; readonly namePlace: Problem["place"] },
  earlier: { readonly namePlace: Problem["place"] },
): Problem {
  // A kind of which a design has one is written without a name, and is called what it is: site, earthing.
  const isNameless = declaration.name === declaration.kind;
  return {
    id: "duplicate-name",
    severity: "error",
    message: isNameless
      ? `The ${declaration.name} of a design is declared once; this one is left out. Write what both say in the first.`
      : `The name ${declaration.name} is taken: an earlier declaration has it, and this ${sort} is left out. Give it another name.`,
    place: declaration.namePlace,
    related: [{ place: earlier.namePlace, message: `${declaration.name} is first declared here` }],
  };
}

export function wrongKind(mention: Mention, part: Part, wanted: string): Problem {
  return {
    id: "wrong-kind",
    severity: "error",
    message: `${part.name} is a part of kind ${part.kind}; here ${withArticle(wanted)} is needed. Name ${withArticle(wanted)} part.`,
    place: mention.place,
    related: [{ place: part.declaration.kindPlace, message: `${part.name} is declared as ${part.kind}` }],
  };
}

export function unusedPart(part: Part): Problem {
  return {
    id: "unused-part",
    severity: "note",
    message: `No item here is of the part ${part.name}. A part that no item uses is only text: use it, move it to a parts file, or delete it.`,
    place: part.declaration.namePlace,
    unnecessary: true,
  };
}

/** Names that two things inside an item have; a nameless block may stand there more than once. */
export function* innerDuplicates(item: Item): Generator<Problem> {
  if (item.children.length === 0) return;
  const seen = new Map<string, Item>();
  for (const child of item.children) {
    const earlier = seen.get(child.name);
    if (earlier && child.declaration.name !== child.declaration.kind)
      yield duplicateName("item", child.declaration, earlier.declaration);
    seen.set(child.name, child);
    yield* innerDuplicates(child);
  }
}

/** Parts of another kind than the item that names them. */
export function* wrongPartKinds(item: Item): Generator<Problem> {
  const wanted = item.kind === "string" ? "module" : item.kind;
  // Of a kind that does not exist, that is what has to be mended.
  if (item.row && item.part?.row && item.declaration.part && item.part.kind !== wanted)
    yield wrongKind(item.declaration.part, item.part, wanted);
  for (const child of item.children) yield* wrongPartKinds(child);
}
