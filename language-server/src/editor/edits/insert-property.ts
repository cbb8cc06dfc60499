import type { Block, ItemDeclaration, Property } from "../../design/model.js";
import type { Place } from "../../place.js";
import type { Change } from "./change.js";
import { indentAt, indentStep, isTall, lineEnding, openLineEnd } from "./layout.js";

/** A block with the place of the declaration that it belongs to. */
export type BlockInText = Block & { readonly place: Place };

type Member = Property | ItemDeclaration;

/**
 * Writes a property into a block in the block's own style: behind its last property, or behind the whole of a block
 * without any. Comments and the layout of the rest stay as they are. Undefined where the block's text cannot be read.
 */
export function insertProperty(text: string, block: BlockInText, name: string, value: string): Change | undefined {
  const { properties, nested } = block;
  return insertMembers(text, block, [`${name}: ${value}`], lastOf(properties.length > 0 ? properties : nested));
}

/**
 * Writes members into a block behind one of its own, or at its beginning: on the one line of a flat block, on lines of
 * their own in a tall one, between new braces where there are none.
 */
export function insertMembers(
  text: string,
  block: BlockInText,
  written: readonly string[],
  behind: Member | undefined,
): Change | undefined {
  const { place, bodyPlace } = block;
  const { uri, start } = place.chunk;
  const at = (offset: number, inserted: string): Change => ({ uri, start: offset, end: offset, text: inserted });
  if (!bodyPlace) return at(start + place.to, ` { ${written.join("  ")} }`);

  const open = start + bodyPlace.from;
  const close = start + bodyPlace.to - 1;
  if (text[open] !== "{" || text[close] !== "}" || close <= open) return undefined;
  const inside = text.slice(open + 1, close);
  if (isTall(inside)) return tall(text, block, open, close, behind, written);
  const flat = written.join("  ");
  if (inside.trim() === "") return { uri, start: open, end: close + 1, text: `{ ${flat} }` };
  if (behind) return at(start + behind.place.to, `${separator(text, block)}${flat}`);
  return lastOf([...block.properties, ...block.nested]) ? at(open + 1, ` ${flat} `) : at(close, `${flat} `);
}

function tall(
  text: string,
  block: BlockInText,
  open: number,
  close: number,
  behind: Member | undefined,
  written: readonly string[],
): Change {
  const { uri } = block.place.chunk;
  const ending = lineEnding(text);
  const outer = indentAt(text, open);
  const first = firstMemberStart(block) ?? open;
  const indent = first > open && isTall(text.slice(open, first)) ? indentAt(text, first) : outer + indentStep(text);
  const lines = written.map((line) => `${ending}${indent}${line}`).join("");
  const end = behind ? block.place.chunk.start + behind.place.to : open + 1;
  const lineOpen = openLineEnd(text, end);
  if (!behind) return { uri, start: lineOpen ?? end, end: lineOpen ?? end, text: lines };
  // The closing brace or another sentence follows on the line, or a comment goes on below it.
  const here = lineOpen === undefined || lineOpen > close ? end : lineOpen;
  const closesHere = here === end && /^[ \t]*$/.test(text.slice(end, close));
  return closesHere
    ? { uri, start: here, end: close, text: `${lines}${ending}${outer}` }
    : { uri, start: here, end: here, text: lines };
}

function lastOf(members: readonly Member[]): Member | undefined {
  return members.reduce<Member | undefined>(
    (last, member) => (last && last.place.to > member.place.to ? last : member),
    undefined,
  );
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
