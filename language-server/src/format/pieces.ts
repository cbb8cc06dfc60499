import { isBlank } from "@sunwright/grammar";
import { tokenAt } from "../language/token-at.js";
import { commentEnd } from "../language/tokens.js";

/** One word, mark, comment, or stretch that is left as it is, with what is to stand before it. */
export interface Piece {
  readonly is: "word" | "text" | "number" | "mark" | "line-comment" | "block-comment" | "raw";
  readonly from: number;
  readonly to: number;
  /** What stands there. */
  readonly written: string;
  /** What is to stand there: a quantity has one blank before its unit, a comment moves with its line. */
  image: string;
  /** Line breaks between it and the piece before. */
  readonly breaks: number;
  gap: Gap;
}

/** What is to stand before a piece: a line break with so many steps of indentation, or so many blanks. */
export type Gap =
  | { readonly is: "line"; readonly blank: boolean; readonly steps: number }
  /** A line that keeps the indentation it has. */
  | { readonly is: "raw-line"; readonly blank: boolean; readonly indent: string }
  | { readonly is: "blanks"; readonly count: number };

export const none: Gap = { is: "blanks", count: 0 };
export const one: Gap = { is: "blanks", count: 1 };
export const two: Gap = { is: "blanks", count: 2 };

export function isComment({ is }: Piece): boolean {
  return is === "line-comment" || is === "block-comment";
}

/** Cuts a stretch of text that parses into pieces. `last` is where the piece before the first one ended. */
export function piecesOf(text: string, from: number, to: number, last: number): Piece[] {
  const pieces: Piece[] = [];
  let before: string | undefined;
  let end = last;
  let at = from;
  while (at < to) {
    if (isSpace(text, at)) {
      at++;
      continue;
    }
    const { is, until } = pieceAt(text, at, before);
    const written = text.slice(at, until);
    const image = is === "number" ? spaced(written) : is === "line-comment" ? written.trimEnd() : written;
    pieces.push({ is, from: at, to: until, written, image, breaks: lineBreaks(text.slice(end, at)), gap: none });
    if (is !== "line-comment" && is !== "block-comment") before = written;
    at = until;
    end = until;
  }
  return pieces;
}

function pieceAt(text: string, at: number, before: string | undefined): { is: Piece["is"]; until: number } {
  if (text.startsWith("//", at)) return { is: "line-comment", until: lineEnd(text, at) };
  if (text.startsWith("/*", at)) return { is: "block-comment", until: commentEnd(text, at) };
  const { token, end } = tokenAt(text, at, before);
  if (token === "word" || token === "text" || token === "number") return { is: token, until: end };
  return { is: "mark", until: end };
}

/** `18m` and `18  m` are `18 m`; days, counts and wire gauges stay as they are. */
function spaced(image: string): string {
  const parts = /^([+\-−]?\d+(?:\/0|[.,]\d+)?(?:[eE][+-]?\d+)?)([ \t\u00a0\u202f]*)(?=[^\d\-.,])(.+)$/u.exec(image);
  return parts ? `${parts[1]} ${parts[3]}` : image;
}

export function isSpace(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return isBlank(code) || code === 10 || code === 13 || code === 0xfeff || /\s/.test(text[at]!);
}

export function lineBreaks(space: string): number {
  return space.match(/\r\n|\r|\n/g)?.length ?? 0;
}

function lineEnd(text: string, at: number): number {
  const pattern = /[\r\n]/g;
  pattern.lastIndex = at;
  return pattern.exec(text)?.index ?? text.length;
}
