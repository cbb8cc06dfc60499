import { isNameStart } from "@sunwright/grammar";
import type { Source } from "@sunwright/grammar/ast";
import type { LangiumParser, Lexer, ParseResult } from "langium";
import type { Fragment, Problem } from "../design/model.js";
import { deepest } from "./chunk-scan.js";
import type { SourceChunk } from "./chunks.js";
import { DeclarationReader, missingValue } from "./declarations.js";
import { takesNextLine } from "./next-line.js";
import { Places } from "./places.js";
import type { Token } from "./syntax-faults.js";
import { firstError, syntaxProblem, unfinishedProblem } from "./syntax-problem.js";
import { unclosedText } from "./unclosed.js";
import { blanked, unfinishedLine, withoutLineEnd, wordsAround } from "./unfinished-line.js";
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
    const parse = (own: string): ParseResult<Source> => this.parser.parse<Source>(own);
    const values = new ValueReader(places);
    let result = parse(text);
    let tokens: Token[] = [];
    if (isFaulty(result)) {
      tokens = this.lexer.tokenize(text).tokens;
      const mended = this.withoutEmptyProperties(text, result, tokens, places, values.problems);
      if (mended) result = mended;
    }

    const read = readOf(result, text, places, values);
    const isWhole = !isFaulty(result) && !unclosedText(text, places);
    const overrun = isWhole ? takesNextLine(read.declarations, text) : undefined;
    if (isWhole && !overrun) return { chunk, ...read, broken: false };

    if (overrun) tokens = this.lexer.tokenize(text).tokens;
    const unfinished = isWhole ? undefined : unfinishedLine(text, result, tokens, parse);
    const syntax =
      overrun ??
      (unfinished ? unfinishedProblem(unfinished, places) : syntaxProblem({ chunk, text, result, tokens, places }));
    const { from } = syntax.place;
    const line = unfinished ?? wordsAround(text, tokens, from);
    // What is not closed takes words with it that stand on no line of their own.
    if (syntax.id === "syntax")
      for (const rest of withoutLineEnd(text, line, tokens)) {
        const tree = parse(rest);
        const others = isFaulty(tree) ? undefined : readOf(tree, rest, places, new ValueReader(places));
        if (!others || takesNextLine(others.declarations, rest)) continue;
        return { chunk, declarations: others.declarations, problems: [...others.problems, syntax], broken: true };
      }
    // Behind a syntax error the parser guesses; what it made of the rest would only name things that nobody wrote.
    const sure = read.problems.filter(({ id, place }) => place.to <= from && id !== "missing-value");
    const kept = read.declarations.filter(({ place }) => place.from < from);
    return { chunk, declarations: kept, problems: [...sure, syntax], broken: true };
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
      mended = blanked(mended, from, to);
      found.push(missingValue(name!.image, places.span(from, to)));
      result = this.parser.parse<Source>(mended);
      if (isFaulty(result)) continue;
      problems.push(...found);
      return result;
    }
    return undefined;
  }
}

/** What a tree says, and what is wrong with its values. */
function readOf(
  { value }: ParseResult<Source>,
  text: string,
  places: Places,
  values: ValueReader,
): Pick<Fragment, "declarations" | "problems"> {
  const reader = new DeclarationReader(places, values, text.includes("/**"));
  const declarations = (value.declarations ?? []).flatMap((node) => reader.read(node) ?? []);
  return { declarations, problems: values.problems };
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
