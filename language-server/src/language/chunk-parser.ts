import { isNameStart } from "@sunwright/grammar";
import type { Source } from "@sunwright/grammar/ast";
import type { LangiumParser, Lexer, ParseResult } from "langium";
import type { Declaration, Fragment, Problem } from "../design/model.js";
import { deepest } from "./chunk-scan.js";
import type { SourceChunk } from "./chunks.js";
import { DeclarationReader, missingValue } from "./declarations.js";
import { takesNextLine } from "./next-line.js";
import { Places } from "./places.js";
import type { Token } from "./syntax-faults.js";
import { firstError, syntaxProblem, unfinishedProblem } from "./syntax-problem.js";
import { unclosedText } from "./unclosed.js";
import { ValueReader } from "./values.js";

/** Longer than any declaration that somebody wrote; what is longer is no design, and would only cost memory. */
export const longest = 500_000;

/** Parses one chunk into a fragment. */
export class ChunkParser {
  constructor(
    private readonly parser: LangiumParser,
    private readonly lexer: Lexer,
  ) {}

  /**
   * The fragment of a chunk of `text`. Never throws: what does not parse is a problem in the fragment, which is then
   * `broken` and holds the declarations that still make sense.
   */
  parse(chunk: SourceChunk, text: string): Fragment {
    const places = new Places(chunk);
    if (chunk.length > longest) return unread(chunk, tooLong(places, chunk.length));
    if (chunk.deep !== undefined) return unread(chunk, tooDeep(places, chunk.deep));
    // A slice would keep the whole text of this version in memory for as long as the fragment lives.
    const own = ` ${text.slice(chunk.start, chunk.start + chunk.length)}`.slice(1);
    try {
      return this.read(chunk, own, places);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return unread(chunk, tooDeep(places, 0));
    }
  }

  private read(chunk: SourceChunk, text: string, places: Places): Fragment {
    const values = new ValueReader(places);
    let result = this.parser.parse<Source>(text);
    let tokens: Token[] = [];
    if (isFaulty(result)) {
      tokens = this.lexer.tokenize(text).tokens;
      const mended = this.withoutEmptyProperties(text, result, tokens, places, values.problems);
      if (mended) result = mended;
    }

    const reader = new DeclarationReader(places, values, text.includes("/**"));
    const declarations: Declaration[] = [];
    for (const node of result.value.declarations ?? []) {
      const declaration = reader.read(node);
      if (declaration) declarations.push(declaration);
    }
    const isWhole = !isFaulty(result) && !unclosedText(text, places);
    const overrun = isWhole ? takesNextLine(declarations, text) : undefined;
    if (isWhole && !overrun) return { chunk, declarations, problems: values.problems, broken: false };
    const unfinished = isWhole ? undefined : this.unfinishedLine(text, result, tokens);
    const syntax =
      overrun ??
      (unfinished ? unfinishedProblem(unfinished, places) : syntaxProblem({ chunk, text, result, tokens, places }));
    // Behind a syntax error the parser guesses; what it made of the rest would only name things that nobody wrote.
    const { from } = syntax.place;
    const sure = values.problems.filter(({ id, place }) => place.to <= from && id !== "missing-value");
    const kept = declarations.filter(({ place }) => place.from < from);
    return { chunk, declarations: kept, problems: [...sure, syntax], broken: true };
  }

  /**
   * The words of a line that is to blame for what the parser stumbles over below it: without them the rest can be read.
   * A head whose brace is not written yet is known by the property on the next line.
   */
  private unfinishedLine(
    text: string,
    result: ParseResult<Source>,
    tokens: readonly Token[],
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
      if (!tokens.some(({ image, startOffset }) => image === "{" && startOffset < from))
        return isBody ? words : undefined;
      const without = this.parser.parse<Source>(text.slice(0, from) + " ".repeat(next - from) + text.slice(next));
      const error = firstError(without)?.token.startOffset;
      if (error === undefined || !(error <= at)) return words;
      next = lineStart(text, from);
    }
    return undefined;
  }

  /**
   * `tilt:` with the next property behind it, as it stands while a value is being typed: the parser takes the next name
   * for the value and stumbles over its colon. Such a property is read as if it were not there, which costs it alone.
   * Undefined where that does not make the text readable.
   */
  private withoutEmptyProperties(
    text: string,
    first: ParseResult<Source>,
    tokens: readonly Token[],
    places: Places,
    problems: Problem[],
  ): ParseResult<Source> | undefined {
    let result = first;
    let mended = text;
    const found: Problem[] = [];
    for (let round = 0; round < 8; round++) {
      const at = firstError(result)?.token.startOffset ?? -1;
      const colon = tokens.findIndex((token) => token.startOffset === at);
      const [name, empty, next] = tokens.slice(colon - 3, colon);
      if (colon < 3 || tokens[colon]!.image !== ":" || empty!.image !== ":" || !isWord(name!) || !isWord(next!)) break;
      const { startOffset: from } = name!;
      const to = empty!.startOffset + 1;
      mended = mended.slice(0, from) + " ".repeat(to - from) + mended.slice(to);
      found.push(missingValue(name!.image, places.span(from, to)));
      result = this.parser.parse<Source>(mended);
      if (isFaulty(result)) continue;
      problems.push(...found);
      return result;
    }
    return undefined;
  }
}

/** An unfinished line can hide behind so many whole ones, which are then read in wrong pairs. */
const linesBack = 4;

/** The words of the last line above an offset, behind the last brace on it. */
function lastLine(text: string, tokens: readonly Token[], next: number): readonly Token[] {
  const last = tokens.findLast(({ startOffset }) => startOffset < next);
  if (!last) return [];
  const from = lineStart(text, last.startOffset);
  const words = tokens.filter(({ startOffset }) => from <= startOffset && startOffset < next);
  return words.slice(words.findLastIndex(({ image }) => image === "{" || image === "}") + 1);
}

/** Where a line begins that an offset is on. */
function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
}

function isFaulty(result: ParseResult): boolean {
  return result.parserErrors.length > 0 || result.lexerErrors.length > 0;
}

function isWord(token: Token): boolean {
  return isNameStart(token.image.charCodeAt(0));
}

function unread(chunk: SourceChunk, problem: Problem): Fragment {
  return { chunk, declarations: [], problems: [problem], broken: true };
}

function tooDeep(places: Places, offset: number): Problem {
  return {
    id: "too-deep",
    severity: "error",
    message: `Blocks are nested more than ${deepest} deep here, so this declaration is not read. Close the outer ones first; no installation needs more than a handful.`,
    place: places.span(offset, offset + 1),
  };
}

function tooLong(places: Places, length: number): Problem {
  return {
    id: "too-long",
    severity: "error",
    message: `This declaration is ${length} characters long, more than the ${longest} that are read, so it is skipped. Begin each declaration on a line of its own, and check that the file is a design.`,
    place: places.span(0, Math.min(length, 80)),
  };
}
