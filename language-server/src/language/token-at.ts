import { isDigit, isNameStart, nameEnd, quantityEnd } from "@sunwright/grammar";
import type { Token } from "./head.js";
import { stringEnd } from "./tokens.js";

export type TextToken = Token | "}";

const marks: Readonly<Record<string, TextToken>> = { ":": ":", ".": ".", "{": "{", "}": "}" };

/**
 * The token that begins at an offset where neither a blank nor a comment stands, as the lexer would cut it: for those
 * who read half-typed or unparsed text. `before` is the word before it: behind `is` and `way` a number has no unit.
 */
export function tokenAt(
  text: string,
  at: number,
  before: string | undefined,
): { readonly token: TextToken; readonly end: number } {
  const code = text.charCodeAt(at);
  if (isNameStart(code)) return { token: "word", end: nameEnd(text, at) };
  if (code === 34) return { token: "text", end: stringEnd(text, at) };
  const signed = code === 43 || code === 45 || code === 0x2212;
  if (isDigit(code) || (signed && isDigit(text.charCodeAt(at + 1)))) {
    const day = /\d{4}-\d{2}-\d{2}(?!\w)/y;
    day.lastIndex = at;
    if (day.test(text)) return { token: "number", end: day.lastIndex };
    const bare = before === "is" || before === "way";
    return { token: "number", end: Math.max(quantityEnd(text, at, bare), at + 1) };
  }
  return { token: marks[text[at]!] ?? "other", end: at + 1 };
}
