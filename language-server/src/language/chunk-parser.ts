import type { Source } from "@sunwright/grammar/ast";
import type { LangiumParser, ParseResult } from "langium";
import type { Declaration, Fragment, Problem } from "../design/model.js";
import { deepest } from "./chunk-scan.js";
import type { SourceChunk } from "./chunks.js";
import { DeclarationReader } from "./declarations.js";
import { Places } from "./places.js";
import type { SyntaxMessages } from "./syntax-messages.js";
import { syntaxProblem } from "./syntax-problem.js";
import { ValueReader } from "./values.js";

/** Longer than any declaration that somebody wrote; what is longer is no design, and would only cost memory. */
export const longest = 500_000;

/** Parses one chunk into a fragment. */
export class ChunkParser {
  constructor(
    private readonly parser: LangiumParser,
    private readonly messages: SyntaxMessages,
  ) {}

  /**
   * The fragment of a chunk of `text`. Never throws: what does not parse is a problem in the fragment, which is then
   * `broken` and holds the declarations that still make sense.
   */
  parse(chunk: SourceChunk, text: string): Fragment {
    const places = new Places(chunk);
    if (chunk.length > longest) {
      return unread(chunk, tooLong(places, chunk.length));
    }
    if (chunk.deep !== undefined) return unread(chunk, tooDeep(places, chunk.deep));
    // A slice would keep the whole text of this version in memory for as long as the fragment lives.
    const own = ` ${text.slice(chunk.start, chunk.start + chunk.length)}`.slice(1);
    let result: ParseResult<Source>;
    try {
      result = this.parser.parse<Source>(own);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return unread(chunk, tooDeep(places, 0));
    }

    const values = new ValueReader(places);
    const reader = new DeclarationReader(places, values, own.includes("/**"));
    const declarations: Declaration[] = [];
    for (const node of result.value.declarations ?? []) {
      const declaration = reader.read(node);
      if (declaration) declarations.push(declaration);
    }
    const syntax = syntaxProblem(result, own, chunk, places, this.messages);
    const problems = syntax
      ? [syntax, ...values.problems.filter(({ place }) => place.to <= syntax.place.from)]
      : values.problems;
    return { chunk, declarations, problems, broken: syntax !== undefined };
  }
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
