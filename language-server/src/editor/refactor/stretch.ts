import { absolute, type Place } from "../../place.js";
import type { Change } from "../edits/change.js";
import { lineEnding, lineStart, openLineEnd } from "../edits/layout.js";

/** The part of a text that a declaration takes up, with the comments that belong to it. Offsets. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  /** Whether it is made of whole lines, the last line break included; else it is the declaration alone. */
  readonly isWhole: boolean;
}

/** A declaration with the comments directly above it and those behind it on its last line. */
export function stretchOf(text: string, place: Place): Stretch {
  const { start, end } = absolute(place);
  const first = lineStart(text, start);
  const last = openLineEnd(text, end);
  if (text.slice(first, start).trim() !== "" || last === undefined) return { start, end, isWhole: false };
  return { start: aboveComments(text, first), end: behindBreak(text, last), isWhole: true };
}

/** A stretch taken out; of the empty lines around it one stays. */
export function removal(text: string, uri: string, { start, end, isWhole }: Stretch): Change {
  if (!isWhole) {
    const from = start - (/[ \t]*$/.exec(text.slice(lineStart(text, start), start))?.[0].length ?? 0);
    return { uri, start: from, end, text: "" };
  }
  const rest = text.slice(end);
  if (rest.trim() === "") {
    const before = text.slice(0, start).trimEnd();
    return { uri, start: before === "" ? 0 : behindBreak(text, before.length), end: text.length, text: "" };
  }
  const emptyBelow = /^([ \t]*(\r\n|\r|\n))+/.exec(rest)?.[0].length ?? 0;
  const emptyAbove = start === 0 || isEmptyLine(text, previousLine(text, start));
  return { uri, start, end: emptyAbove ? end + emptyBelow : end, text: "" };
}

/** Lines written behind a declaration; what follows it on its line stays behind them. */
export function linesBehind(text: string, place: Place, lines: string): Change {
  const { uri, end } = absolute(place);
  const ending = lineEnding(text);
  const at = openLineEnd(text, end);
  if (at === undefined) return { uri, start: end, end, text: `${ending}${lines}${ending}` };
  return { uri, start: at, end: at, text: `${ending}${lines}` };
}

/** Lines written before a declaration and the comments that belong to it. */
export function linesBefore(text: string, place: Place, lines: string): Change {
  const { uri } = absolute(place);
  const { start, isWhole } = stretchOf(text, place);
  const ending = lineEnding(text);
  const broken = isWhole || start === lineStart(text, start) ? "" : ending;
  return { uri, start, end: start, text: `${broken}${lines}${ending}` };
}

/** The text of a stretch with all its line breaks written in one way, and one at its end. */
export function linesOf(text: string, { start, end }: Stretch, ending: string): string {
  return `${text
    .slice(start, end)
    .trimEnd()
    .split(/\r\n|\r|\n/)
    .join(ending)}${ending}`;
}

function aboveComments(text: string, first: number): number {
  let at = first;
  while (at > 0) {
    const above = previousLine(text, at);
    const line = text.slice(above, at).trim();
    if (line.startsWith("//")) at = above;
    else if (line.endsWith("*/")) {
      const open = text.lastIndexOf("/*", at);
      const begins = lineStart(text, open);
      if (open < 0 || text.slice(begins, open).trim() !== "" || text.indexOf("*/", open) + 2 < above) return at;
      at = begins;
    } else return at;
  }
  return at;
}

function previousLine(text: string, start: number): number {
  const before = text[start - 1] === "\n" && text[start - 2] === "\r" ? start - 2 : start - 1;
  return lineStart(text, before);
}

function isEmptyLine(text: string, start: number): boolean {
  return /^[ \t]*(\r|\n|$)/.test(text.slice(start, start + 500));
}

function behindBreak(text: string, at: number): number {
  if (text.startsWith("\r\n", at)) return at + 2;
  return at < text.length ? at + 1 : at;
}
