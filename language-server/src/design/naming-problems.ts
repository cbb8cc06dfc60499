import type { Mention, Problem } from "./model.js";
import type { Part } from "./things.js";

/** A name that an earlier declaration has; the later one is left out. */
export function duplicateName(
  sort: string,
  declaration: { readonly name: string; readonly namePlace: Problem["place"] },
  earlier: { readonly namePlace: Problem["place"] },
): Problem {
  return {
    id: "duplicate-name",
    severity: "error",
    message: `The name ${declaration.name} is taken: an earlier declaration has it, and this ${sort} is left out. Give it another name.`,
    place: declaration.namePlace,
    related: [{ place: earlier.namePlace, message: `${declaration.name} is first declared here` }],
  };
}

export function wrongKind(mention: Mention, part: Part, wanted: string): Problem {
  return {
    id: "wrong-kind",
    severity: "error",
    message: `${part.name} is a part of kind ${part.kind}; here a ${wanted} is needed. Name a ${wanted} part.`,
    place: mention.place,
    related: [{ place: part.declaration.kindPlace, message: `${part.name} is declared as ${part.kind}` }],
  };
}

export function unusedPart(part: Part): Problem {
  return {
    id: "unused-part",
    severity: "note",
    message: `Nothing here is a ${part.name}. A part that no item uses is only text: use it, move it to a parts file, or delete it.`,
    place: part.declaration.namePlace,
    unnecessary: true,
  };
}
