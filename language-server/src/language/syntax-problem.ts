import { isDigit } from "@sunwright/grammar";
import type { ParseResult } from "langium";
import type { Problem } from "../design/model.js";
import type { SourceChunk } from "./chunks.js";
import type { Places } from "./places.js";
import { type RecognitionFault, type SyntaxMessages, surroundingForm } from "./syntax-messages.js";
import { commentEnd, stringEnd } from "./tokens.js";

/**
 * The first thing wrong with the form of a chunk, or undefined. Only the first: what follows a syntax error is its
 * echo as a rule, and ten squiggles for one slip hide it.
 */
export function syntaxProblem(
  result: ParseResult,
  text: string,
  chunk: SourceChunk,
  places: Places,
  messages: SyntaxMessages,
): Problem | undefined {
  const unclosed = unclosedText(text, places) ?? junk(result, places, text);
  const error = result.parserErrors[0];
  // What the parser misses at the end of a text is an echo of a quote that swallowed it.
  if (unclosed && (!error || isAtEnd(error) || error.token.startOffset >= unclosed.place.from)) return unclosed;
  return misplaced(error, text, chunk, places, messages);
}

/** A string or a block comment that does not end. */
function unclosedText(text: string, places: Places): Problem | undefined {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 34) {
      const end = stringEnd(text, at);
      if (end - at < 2 || text.charCodeAt(end - 1) !== 34 || isEscaped(text, at, end - 1)) {
        return {
          id: "unclosed-string",
          severity: "error",
          message:
            'This text has no closing quote, so the rest of the line belongs to it. Write " where the text ends.',
          place: places.span(at, end),
        };
      }
      at = end - 1;
    } else if (code === 47 && text.charCodeAt(at + 1) === 47) {
      while (at < text.length && text.charCodeAt(at) !== 10 && text.charCodeAt(at) !== 13) at++;
    } else if (code === 47 && text.charCodeAt(at + 1) === 42) {
      const end = commentEnd(text, at);
      if (!text.startsWith("*/", end - 2) || end - at < 4) {
        return {
          id: "unclosed-comment",
          severity: "error",
          message: "This comment is never closed, so everything behind it is left out. Write */ where it ends.",
          place: places.span(at, at + 2),
        };
      }
      at = end - 1;
    }
  }
  return undefined;
}

function isEscaped(text: string, from: number, at: number): boolean {
  let slashes = 0;
  for (let back = at - 1; back > from && text.charCodeAt(back) === 92; back--) slashes++;
  return slashes % 2 === 1;
}

/** Characters that no word of the language has: one problem for a run of them. */
function junk(result: ParseResult, places: Places, text: string): Problem | undefined {
  const [first, ...others] = result.lexerErrors;
  if (!first) return undefined;
  let end = first.offset + Math.max(1, first.length);
  for (const { offset, length } of others) if (offset === end) end = offset + Math.max(1, length);
  const run = text.slice(first.offset, end);
  return {
    id: "unexpected-character",
    severity: "error",
    message: `${printable(run)} has no meaning here, so the declaration cannot be read. Delete it, or put it into a comment or into double quotes.`,
    place: places.span(first.offset, end),
  };
}

/** Shows characters that cannot be seen by their code point. */
function printable(run: string): string {
  const shown = [...run.slice(0, 12)]
    .map((sign) =>
      /[\p{C}\p{Z}]/u.test(sign) ? `U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}` : sign,
    )
    .join("");
  return run.length > 12 ? `${shown}… (${run.length} characters)` : shown;
}

function misplaced(
  error: RecognitionFault | undefined,
  text: string,
  chunk: SourceChunk,
  places: Places,
  messages: SyntaxMessages,
): Problem | undefined {
  if (!error) return undefined;
  const { token } = error;
  const atEnd = isAtEnd(error);
  if (atEnd && chunk.unclosed !== undefined) {
    return {
      id: "syntax",
      severity: "error",
      message: "This { is never closed, so the block has no end. Write } where it ends.",
      place: places.span(chunk.unclosed, chunk.unclosed + 1),
    };
  }
  if (token.image === "." && isDigit(text.charCodeAt(token.startOffset + 1))) {
    return {
      id: "syntax",
      severity: "error",
      message: "A number begins with a digit: a point alone is easily overlooked. Write 0 before the point.",
      place: places.span(token.startOffset, token.startOffset + 1),
      suggestions: [{ title: "Write 0 before the point", text: "0." }],
    };
  }
  const place = atEnd
    ? lastWord(error, text, places)
    : places.span(token.startOffset, token.startOffset + token.image.length);
  const keyword = messages.expectedKeyword.get(token);
  const misspelt = !atEnd && keyword !== undefined && isNear(token.image, keyword);
  return {
    id: "syntax",
    severity: "error",
    message: `${error.message.trim()} ${surroundingForm(error.context.ruleStack)}`.trim(),
    place,
    ...(misspelt ? { suggestions: [{ title: `Change to ${keyword}`, text: keyword }] } : {}),
  };
}

/** The end of the text is a token without a place. */
function isAtEnd({ token }: RecognitionFault): boolean {
  return token.image === "" || !(token.startOffset >= 0);
}

/** Where something is missing at the end, the last word before it is the place to look at. */
function lastWord(error: RecognitionFault, text: string, places: Places) {
  const previous = (error as { previousToken?: { startOffset: number; image: string } }).previousToken;
  if (previous?.image && previous.startOffset >= 0) {
    return places.span(previous.startOffset, previous.startOffset + previous.image.length);
  }
  const end = text.trimEnd().length;
  return places.span(Math.max(0, end - 1), Math.max(1, end));
}

/** The same letters in another order or case, one more or one less. */
function isNear(word: string, keyword: string): boolean {
  const sorted = (text: string) => [...text.toLowerCase()].sort().join("");
  if (sorted(word) === sorted(keyword)) return true;
  const [short, long] = word.length < keyword.length ? [word, keyword] : [keyword, word];
  if (long.length - short.length !== 1 || long.length < 3) return false;
  for (let cut = 0; cut < long.length; cut++) if (long.slice(0, cut) + long.slice(cut + 1) === short) return true;
  return false;
}
