import { isDigit } from "@sunwright/grammar";
import type { ParseResult } from "langium";
import type { Problem } from "../design/model.js";
import type { Place } from "../place.js";
import type { SourceChunk } from "./chunks.js";
import type { Places } from "./places.js";
import { type Fault, plainRule, type RecognitionFault, readFault, type Token } from "./syntax-faults.js";
import { syntaxMessage, unfinishedMessage } from "./syntax-messages.js";
import { unclosedText } from "./unclosed.js";

/** A chunk whose parse went wrong, with what is needed to say how. */
export interface FaultyChunk {
  readonly chunk: SourceChunk;
  readonly text: string;
  readonly result: ParseResult;
  /** The words of the chunk, without comments. */
  readonly tokens: readonly Token[];
  readonly places: Places;
}

/**
 * The first thing wrong with the form of a chunk. Only the first: what follows a syntax error is its echo as a rule,
 * and ten squiggles for one slip hide it.
 */
export function syntaxProblem(faulty: FaultyChunk): Problem {
  const unclosed = unclosedText(faulty.text, faulty.places) ?? junk(faulty);
  const error = firstError(faulty.result);
  // What the parser misses at the end of a text is an echo of a quote that swallowed it.
  if (unclosed && (!error || isAtEnd(error) || error.token.startOffset >= unclosed.place.from)) return unclosed;
  return misplaced(error!, faulty);
}

/** The error nearest to the beginning; recovery does not report them in order. */
export function firstError({ parserErrors }: ParseResult): RecognitionFault | undefined {
  return parserErrors.reduce<RecognitionFault | undefined>(
    (first, error) => (first && !(position(error) < position(first)) ? first : error),
    undefined,
  );
}

function position(error: RecognitionFault): number {
  return isAtEnd(error) ? Number.POSITIVE_INFINITY : error.token.startOffset;
}

/** The end of the text is a token without a place. */
function isAtEnd({ token }: RecognitionFault): boolean {
  return token.image === "" || !(token.startOffset >= 0);
}

/** Characters that no word of the language has: one problem for a run of them. */
function junk({ result, places, text }: FaultyChunk): Problem | undefined {
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
  const code = (sign: string) => `U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;
  const shown = [...run.slice(0, 12)].map((sign) => (/[\p{C}\p{Z}]/u.test(sign) ? code(sign) : sign)).join("");
  return run.length > 12 ? `${shown}… (${run.length} characters)` : shown;
}

function misplaced(error: RecognitionFault, { text, chunk, places, tokens }: FaultyChunk): Problem {
  const atEnd = isAtEnd(error);
  if (atEnd && chunk.unclosed !== undefined) {
    return syntax(
      places.span(chunk.unclosed, chunk.unclosed + 1),
      "This { is never closed, so the block has no end. Write } where it ends.",
    );
  }
  const offset = position(error);
  const before = tokens.findLast((token) => token.startOffset < offset);
  const { image } = error.token;
  if (image === "." && isDigit(text.charCodeAt(offset + 1))) {
    return {
      ...syntax(
        places.span(offset, offset + 1),
        "A number begins with a digit: a point alone is easily overlooked. Write 0 before the point.",
      ),
      suggestions: [{ title: "Write 0 before the point", text: "0." }],
    };
  }
  const fault = readFault(error);
  const message = syntaxMessage(fault, before?.image ?? "", image, error.context.ruleStack.map(plainRule));
  const keyword = fault.is === "mismatch" && /^[a-z]+$/.test(fault.expected) ? fault.expected : undefined;
  if (!atEnd && keyword !== undefined && isNear(image, keyword)) {
    const suggestions = [{ title: `Change to ${keyword}`, text: keyword }];
    return { ...syntax(wordPlace(error.token, places), message), suggestions };
  }
  // Where something is missing at the end of the text or of a line, the last word before it is the place to look at.
  const isMissing = atEnd || (before !== undefined && misses(fault, before) && isOnNextLine(before, error.token, text));
  return syntax(wordPlace(isMissing ? before : error.token, places), message);
}

function isOnNextLine(before: Token, token: Token, text: string): boolean {
  return /[\r\n]/.test(text.slice(before.startOffset + before.image.length, token.startOffset));
}

/** Whether something is not there that has to be, rather than something there that has no place. */
function misses(fault: Fault, before: Token): boolean {
  return before.image === ":" || (fault.is === "mismatch" && fault.expected !== "}");
}

/** A line that stops too early, marked at its last word. */
export function unfinishedProblem(words: readonly Token[], places: Places): Problem {
  const last = words[words.length - 1];
  return syntax(wordPlace(last, places), unfinishedMessage(words.map(({ image }) => image)));
}

function syntax(place: Place, message: string): Problem {
  return { id: "syntax", severity: "error", message, place };
}

function wordPlace(token: Token | undefined, places: Places): Place {
  return token ? places.span(token.startOffset, token.startOffset + token.image.length) : places.span(0, 1);
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
