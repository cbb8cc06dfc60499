import { declarationWords, isDigit, isNamePart } from "@sunwright/grammar";
import { kindRow } from "../design/schema/index.js";

/** The scanner's view of words and characters. A declaration word is a keyword or a kind that begins one. */
export function isDeclarationWord(word: string): boolean {
  return declarationWords.has(word) || kindRow(word) !== undefined;
}

export function isLineBreak(code: number): boolean {
  return code === 10 || code === 13;
}

/** White space that does not end a line: the same characters as the terminal WHITESPACE of the grammar. */
export function isSpace(code: number): boolean {
  if (code < 128) return code === 32 || code === 9 || code === 11 || code === 12;
  return code === 0xa0 || code === 0xfeff || otherSpace.test(String.fromCharCode(code));
}
const otherSpace = /\s/;

/** Is there nothing but white space between the end of the comment at `from` and `to`? */
export function isOnlySpace(text: string, from: number, to: number): boolean {
  return text.slice(text.indexOf("*/", from + 2) + 2, to).trim() === "";
}

export function lineEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && !isLineBreak(text.charCodeAt(at))) at++;
  return at;
}

/** A number with whatever is glued to it; a day is one number too. */
export function numberEnd(text: string, from: number): number {
  let at = from + 1;
  for (;;) {
    const code = text.charCodeAt(at);
    if (isNamePart(code)) at++;
    else if ((code === 46 || code === 44 || code === 45) && isDigit(text.charCodeAt(at + 1))) at += 2;
    else return at;
  }
}
