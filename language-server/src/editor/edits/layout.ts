import { stringEnd } from "../../language/tokens.js";

/* How a text is laid out: what an insertion looks at, so that it reads as if its neighbours' writer had made it. */

/** The line ending that a text uses. */
export function lineEnding(text: string): string {
  return /\r\n/.test(text) ? "\r\n" : "\n";
}

/** The blanks that the line of an offset begins with. */
export function indentAt(text: string, offset: number): string {
  const start = lineStart(text, offset);
  return /^[ \t]*/.exec(text.slice(start, start + 200))?.[0] ?? "";
}

export function lineStart(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && text[at - 1] !== "\n" && text[at - 1] !== "\r") at--;
  return at;
}

export function lineEnd(text: string, offset: number): number {
  let at = offset;
  while (at < text.length && text[at] !== "\n" && text[at] !== "\r") at++;
  return at;
}

/** One step of indentation: that of the first indented line, four blanks where there is none. */
export function indentStep(text: string): string {
  return /(?:^|\n)(\t| {2,})\S/.exec(text.slice(0, 20_000))?.[1] ?? "    ";
}

/**
 * Where something new can go on a line of its own behind what ends at `offset`: the end of that line, comments on it
 * included. Undefined where more of the sentence follows on the line, or a comment reaches beyond it.
 */
export function openLineEnd(text: string, offset: number): number | undefined {
  const end = lineEnd(text, offset);
  let at = offset;
  while (at < end) {
    if (text[at] === " " || text[at] === "\t") at++;
    else if (text.startsWith("//", at)) return end;
    else if (text.startsWith("/*", at)) {
      const close = text.indexOf("*/", at + 2);
      if (close < 0 || close + 2 > end) return undefined;
      at = close + 2;
    } else return undefined;
  }
  return end;
}

/** Whether a stretch of text holds a line break outside strings and comments, so that a block counts as tall. */
export function isTall(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    if (text[at] === "\n" || text[at] === "\r") return true;
    if (text[at] === '"') at = stringEnd(text, at) - 1;
  }
  return false;
}
