import type { Source } from "@sunwright/grammar/ast";
import type { ParseResult } from "langium";
import type { Token } from "./syntax-faults.js";
import { firstError } from "./syntax-problem.js";

type Parse = (text: string) => ParseResult<Source>;

/**
 * The words of a line that is to blame for what the parser stumbles over below it: without them the rest can be read.
 * A head whose brace is not written yet is known by the property on the next line.
 */
export function unfinishedLine(
  text: string,
  result: ParseResult<Source>,
  tokens: readonly Token[],
  parse: Parse,
): readonly Token[] | undefined {
  const at = firstError(result)?.token.startOffset ?? Number.NaN;
  if (!(at >= 0)) return undefined;
  let next = lineStart(text, at);
  const isBody = /^\s*(?:[\p{L}_][\p{L}\p{N}_-]*\s*:|\})/u.test(text.slice(next));
  for (let round = 0; round < linesBack; round++) {
    const words = lastLine(text, tokens, next);
    const [first] = words;
    if (!first) return undefined;
    const from = first.startOffset;
    if (!isInBlock(words, tokens)) return isBody ? words : undefined;
    const error = firstError(parse(blanked(text, from, next)))?.token.startOffset;
    if (error === undefined || !(error <= at)) return words;
    next = lineStart(text, from);
  }
  return undefined;
}

/** An unfinished line can hide behind so many whole ones, which are then read in wrong pairs. */
const linesBack = 4;

/** The words around an offset on its line, up to the braces on it. */
export function wordsAround(text: string, tokens: readonly Token[], offset: number): readonly Token[] {
  const from = lineStart(text, offset);
  const rest = text.slice(offset).search(/[\r\n]/);
  const to = rest < 0 ? text.length : offset + rest;
  const words = tokens.filter(({ startOffset }) => from <= startOffset && startOffset < to);
  const open = words.findLastIndex((word) => isBrace(word) && word.startOffset < offset);
  const close = words.findIndex((word) => isBrace(word) && word.startOffset >= offset);
  return words.slice(open + 1, close < 0 ? words.length : close);
}

/**
 * The text of a block without the end of a line that is to blame, the most of the line first: as much of it as makes
 * sense is to stay, so that `way 9: rcbo K9 is` still says that K9 is there. Outside braces nothing would be left.
 */
export function* withoutLineEnd(
  text: string,
  words: readonly Token[],
  tokens: readonly Token[],
): Generator<string, undefined> {
  const last = words[words.length - 1];
  if (!last || !isInBlock(words, tokens)) return;
  const keyword = words.findLastIndex(({ image }) => image === "is" || image === "serves");
  for (const cut of new Set([words.length - 1, Math.max(keyword, 0), 0]))
    yield blanked(text, words[cut]!.startOffset, last.startOffset + last.image.length);
}

function isInBlock([first]: readonly Token[], tokens: readonly Token[]): boolean {
  return (
    first !== undefined && tokens.some(({ image, startOffset }) => image === "{" && startOffset < first.startOffset)
  );
}

/** The words of the last line above an offset, behind the last brace on it. */
function lastLine(text: string, tokens: readonly Token[], next: number): readonly Token[] {
  const last = tokens.findLast(({ startOffset }) => startOffset < next);
  if (!last) return [];
  const from = lineStart(text, last.startOffset);
  const words = tokens.filter(({ startOffset }) => from <= startOffset && startOffset < next);
  return words.slice(words.findLastIndex(isBrace) + 1);
}

function isBrace({ image }: Token): boolean {
  return image === "{" || image === "}";
}

/** Where a line begins that an offset is on. */
function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
}

/** Blanks instead of a stretch, so that every other word keeps its place. */
export function blanked(text: string, from: number, to: number): string {
  return text.slice(0, from) + " ".repeat(to - from) + text.slice(to);
}
