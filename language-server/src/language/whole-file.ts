import type { Source } from "@sunwright/grammar/ast";
import type { LangiumParser } from "langium";
import { longest } from "./chunk-parser.js";
import { split } from "./chunks.js";

/**
 * The tree of a whole text, with every word and comment in it, for what is asked for once in a while and needs them
 * all, such as formatting. Undefined for a text that is nested too deep or too long to be parsed.
 */
export function wholeFileParse(parser: LangiumParser, text: string): Source | undefined {
  if (text.length > longest * 4 || split("", text).chunks.some((chunk) => chunk.deep !== undefined)) return undefined;
  return parser.parse<Source>(text).value;
}
