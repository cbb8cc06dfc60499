import { isBlank } from "@sunwright/grammar";
import { type TextToken, tokenAt } from "../../language/token-at.js";
import { commentEnd } from "../../language/tokens.js";

export interface TokenInText {
  readonly token: TextToken;
  readonly image: string;
  readonly from: number;
  readonly to: number;
  /** Whether it is the first on its line. */
  readonly first: boolean;
}

export interface TokensBefore {
  readonly tokens: readonly TokenInText[];
  /** What the cursor stands in, where that is no place for words: a comment, or a text with its first character. */
  readonly inside?: { readonly is: "comment" | "text"; readonly from: number };
}

/** Cuts a piece of half-typed text into tokens, up to a cursor. Never throws; what is unknown is `other`. */
export function tokensBefore(text: string, start: number, cursor: number): TokensBefore {
  const cut = text.slice(0, cursor);
  const tokens: TokenInText[] = [];
  let first = true;
  let at = start;
  while (at < cursor) {
    const code = cut.charCodeAt(at);
    if (code === 10 || code === 13) {
      first = true;
      at++;
      continue;
    }
    if (isBlank(code) || code === 0xfeff) {
      at++;
      continue;
    }
    if (cut.startsWith("//", at)) {
      const end = lineEnd(cut, at);
      if (end === cursor) return { tokens, inside: { is: "comment", from: at } };
      at = end;
      continue;
    }
    if (cut.startsWith("/*", at)) {
      const end = commentEnd(cut, at);
      if (end === cursor && !cut.endsWith("*/")) return { tokens, inside: { is: "comment", from: at } };
      at = end;
      continue;
    }
    const { token, end } = tokenAt(cut, at, tokens[tokens.length - 1]?.image);
    const image = cut.slice(at, end);
    if (token === "text" && end === cursor && (image.length === 1 || !image.endsWith('"')))
      return { tokens, inside: { is: "text", from: at } };
    tokens.push({ token, image, from: at, to: end, first });
    first = false;
    at = end;
  }
  return { tokens };
}

function lineEnd(text: string, at: number): number {
  const end = text.slice(at).search(/[\r\n]/);
  return end < 0 ? text.length : at + end;
}
