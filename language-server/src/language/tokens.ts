import { quantityEnd, quantityStarts } from "@sunwright/grammar";
import { DefaultTokenBuilder, type GrammarAST } from "langium";

/**
 * Tokens whose pattern a regular expression in the grammar cannot say well.
 *
 * Strings and comments that are not closed are still one token, so that a half-typed line gives one problem at its
 * first character and not one for each word of the text behind it.
 */
export class SunwrightTokenBuilder extends DefaultTokenBuilder {
  protected override buildTerminalToken(terminal: GrammarAST.TerminalRule) {
    const token = super.buildTerminalToken(terminal);
    const own = patterns[terminal.name];
    if (!own) return token;
    return { ...token, PATTERN: own.pattern, START_CHARS_HINT: own.starts, LINE_BREAKS: own.lines };
  }
}

type Pattern = (text: string, offset: number, before: readonly { readonly image: string }[]) => RegExpExecArray | null;

const patterns: Readonly<Record<string, { pattern: Pattern; starts: string[]; lines: boolean }>> = {
  QUANTITY: {
    pattern: (text, offset, before) => {
      const word = before[before.length - 1]?.image;
      return found(text, offset, quantityEnd(text, offset, word === "is" || word === "way"));
    },
    starts: quantityStarts,
    lines: false,
  },
  STRING: { pattern: (text, offset) => found(text, offset, stringEnd(text, offset)), starts: ['"'], lines: false },
  BLOCK_COMMENT: {
    pattern: (text, offset) => found(text, offset, text[offset + 1] === "*" ? commentEnd(text, offset) : -1),
    starts: ["/"],
    lines: true,
  },
};

function found(text: string, offset: number, end: number): RegExpExecArray | null {
  return end < 0 ? null : ([text.slice(offset, end)] as unknown as RegExpExecArray);
}

/** End of the string that begins at `offset`: behind its closing quote, or at the end of the line. */
export function stringEnd(text: string, offset: number): number {
  let at = offset + 1;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 34) return at + 1;
    if (code === 10 || code === 13) return at;
    if (code === 92 && at + 1 < text.length && text[at + 1] !== "\n" && text[at + 1] !== "\r") at++;
  }
  return text.length;
}

/** End of the comment that begins at `offset`: behind its closing mark, or the end of the text. */
export function commentEnd(text: string, offset: number): number {
  const end = text.indexOf("*/", offset + 2);
  return end < 0 ? text.length : end + 2;
}

export function isClosedString(image: string): boolean {
  return image.length > 1 && stringEnd(image, 0) === image.length && image.endsWith('"') && !endsInEscape(image);
}

function endsInEscape(image: string): boolean {
  let slashes = 0;
  for (let at = image.length - 2; at > 0 && image[at] === "\\"; at--) slashes++;
  return slashes % 2 === 1;
}

/** What a string says: without its quotes, with `\"` and `\\` resolved. */
export function stringText(image: string): string {
  const inner = image.slice(1, isClosedString(image) ? -1 : undefined);
  return inner.includes("\\") ? inner.replace(/\\(.)/g, "$1") : inner;
}
