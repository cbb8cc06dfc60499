import type { Block } from "../../design/model.js";
import type { Place } from "../../place.js";
import type { Change } from "./change.js";
import { indentAt, indentStep, isTall, lineEnding, openLineEnd } from "./layout.js";

/** A block with the place of the declaration that it belongs to. */
export type BlockInText = Block & { readonly place: Place };

/**
 * Writes a property into a block in the block's own style: on the one line of a flat block, on a line of its own in a
 * tall one, between new braces where there are none. Comments and the layout of the rest stay as they are.
 * Undefined where the block's text cannot be read.
 */
export function insertProperty(text: string, block: BlockInText, name: string, value: string): Change | undefined {
  const { place, bodyPlace } = block;
  const { uri, start } = place.chunk;
  const written = `${name}: ${value}`;
  const at = (offset: number, inserted: string): Change => ({ uri, start: offset, end: offset, text: inserted });
  if (!bodyPlace) return at(start + place.to, ` { ${written} }`);

  const open = start + bodyPlace.from;
  const close = start + bodyPlace.to - 1;
  if (text[open] !== "{" || text[close] !== "}" || close <= open) return undefined;
  const inside = text.slice(open + 1, close);
  const lastEnd = lastMemberEnd(block);
  if (!isTall(inside)) {
    if (lastEnd === undefined)
      return inside.trim() === "" ? replaced(uri, open, close, written) : at(close, `${written} `);
    return at(lastEnd, `${separator(text, block)}${written}`);
  }
  return tall(text, block, open, close, lastEnd, written);
}

function replaced(uri: string, open: number, close: number, written: string): Change {
  return { uri, start: open, end: close + 1, text: `{ ${written} }` };
}

function tall(
  text: string,
  block: BlockInText,
  open: number,
  close: number,
  lastEnd: number | undefined,
  written: string,
): Change {
  const { uri } = block.place.chunk;
  const ending = lineEnding(text);
  const outer = indentAt(text, open);
  if (lastEnd === undefined) {
    const indent = outer + indentStep(text);
    const lineOpen = openLineEnd(text, open + 1) ?? open + 1;
    return { uri, start: lineOpen, end: lineOpen, text: `${ending}${indent}${written}` };
  }
  const first = firstMemberStart(block) ?? open;
  const indent = first > open && isTall(text.slice(open, first)) ? indentAt(text, first) : outer + indentStep(text);
  const lineOpen = openLineEnd(text, lastEnd);
  // The closing brace or another sentence follows on the line, or a comment goes on below it.
  const here = lineOpen === undefined || lineOpen > close ? lastEnd : lineOpen;
  const closesHere = here === lastEnd && /^[ \t]*$/.test(text.slice(lastEnd, close));
  return closesHere
    ? { uri, start: here, end: close, text: `${ending}${indent}${written}${ending}${outer}` }
    : { uri, start: here, end: here, text: `${ending}${indent}${written}` };
}

/** Properties come before what is nested: the new one follows the last property, or the whole of a block without any. */
function lastMemberEnd({ properties, nested, place }: BlockInText): number | undefined {
  const ends = (properties.length > 0 ? properties : nested).map((member) => member.place.to);
  return ends.length === 0 ? undefined : place.chunk.start + Math.max(...ends);
}

function firstMemberStart({ properties, nested, place }: BlockInText): number | undefined {
  const starts = [...properties, ...nested].map((member) => member.place.from);
  return starts.length === 0 ? undefined : place.chunk.start + Math.min(...starts);
}

/** What stands between the properties of a flat block; two blanks where there is only one property. */
function separator(text: string, { properties, place }: BlockInText): string {
  const [before, last] = properties.slice(-2);
  if (!before || !last) return "  ";
  const between = text.slice(place.chunk.start + before.place.to, place.chunk.start + last.place.from);
  return /^[ \t]+$/.test(between) ? between : "  ";
}
