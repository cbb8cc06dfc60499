import type { Block, Declaration, ItemDeclaration, Problem } from "../design/model.js";
import type { Place } from "../place.js";
import { inBraces } from "./syntax-messages.js";

/**
 * A member of a block that has taken the beginning of the next line for its own: `l` above `limits { … }` reads as an
 * item of kind `l`, `existing:` above `rcd R1 is R` as the word `rcd`, `way 9:` gets the device below. That is how a line looks while it is being
 * typed, and the next one is not to be blamed. Undefined where every member ends before the next begins.
 */
export function takesNextLine(declarations: readonly Declaration[], text: string): Problem | undefined {
  for (const declaration of declarations) {
    const found = "properties" in declaration ? inBlock(declaration, text) : undefined;
    if (found) return found;
  }
  return undefined;
}

function inBlock({ properties, nested }: Block, text: string): Problem | undefined {
  for (const { name, value, namePlace, valuePlace } of properties) {
    if (value?.kind === "word" && isBroken(text, namePlace, valuePlace))
      return unfinished(namePlace, `\`${name}\` has no value on its line`);
  }
  for (const item of nested) {
    const found = inHead(item, text) ?? inBlock(item, text);
    if (found) return found;
  }
  return undefined;
}

function inHead(
  { way, kind, kindPlace, name, namePlace, part, serves }: ItemDeclaration,
  text: string,
): Problem | undefined {
  if (way && isBroken(text, way.place, kindPlace))
    return unfinished(way.place, `Way ${way.value} has no device on its line`);
  if (isBroken(text, kindPlace, namePlace)) return unfinished(kindPlace, `\`${kind}\` has no name on its line`);
  if (part && isBroken(text, namePlace, part.place)) return unfinished(namePlace, `${name} has no part on its line`);
  const before = part?.place ?? namePlace;
  if (serves && "place" in serves) {
    const between = text.slice(before.to, serves.place.from);
    if (/[\r\n]/.test(between.slice(between.lastIndexOf("serves"))))
      return unfinished(before, `\`serves\` of ${name} names nothing on its line`);
  }
  return undefined;
}

function isBroken(text: string, before: Place, behind: Place): boolean {
  return /[\r\n]/.test(text.slice(before.to, behind.from));
}

function unfinished(place: Place, what: string): Problem {
  return { id: "syntax", severity: "error", message: `${what}. ${inBraces}`, place };
}
