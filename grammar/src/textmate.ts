import { keywords, nameSource } from "./lexical.js";
import { units } from "./units.js";

/**
 * Syntax colouring for editors, made from the same tables as the language: a unit, keyword or kind that is added there
 * is coloured without anybody touching this file. It colours by form alone; what a name means is the server's business.
 */

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly beginCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly endCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, Rule>>;
}

/** Before and after a word: names have inner hyphens, so `\b` would cut them. */
const from = "(?<![\\w-])";
const to = "(?![\\w-])";
// The tokeniser of editors writes code points with braces.
const name = nameSource.replace(/\\u([0-9A-F]{4})/g, "\\x{$1}");

/** The grammar with the kinds of things that exist (`string`, `inverter`, `breaker` …). */
export function textMateGrammar(kinds: Iterable<string>): TextMateGrammar {
  const kind = `(${[...new Set(kinds)].sort(longestFirst).join("|")})`;
  return {
    name: "Sunwright",
    scopeName: "source.sunwright",
    fileTypes: ["sun"],
    patterns: [
      { include: "#comment" },
      { include: "#string" },
      { include: "#use" },
      { include: "#part" },
      { include: "#run" },
      { include: "#answer" },
      { include: "#property" },
      { include: "#way" },
      { include: "#item" },
      { include: "#day" },
      { include: "#quantity" },
      { include: "#count" },
      { include: "#word" },
      { include: "#flag" },
      { include: "#mention" },
      { include: "#mark" },
    ],
    repository: {
      comment: {
        patterns: [
          { name: "comment.block.documentation.sunwright", begin: "/\\*\\*(?!/)", end: "\\*/" },
          { name: "comment.block.sunwright", begin: "/\\*", end: "\\*/" },
          { name: "comment.line.double-slash.sunwright", match: "//.*$" },
        ],
      },
      string: {
        name: "string.quoted.double.sunwright",
        begin: '"',
        end: '"|$',
        patterns: [{ name: "constant.character.escape.sunwright", match: "\\\\." }],
      },
      use: captured(`${from}(use)(?=\\s*")`, ["keyword.control.import"]),
      part: captured(`${from}(part)\\s+(${name})\\s+(is)\\s+(${name})`, [
        "keyword.declaration",
        "entity.name.type",
        "keyword.operator.word",
        "storage.type",
      ]),
      run: captured(`${from}(run)\\s+(${name})(?=\\s+from${to})`, ["keyword.declaration", "entity.name.function"]),
      answer: captured(`${from}(measured|departure|expect)(?=\\s+${name})`, ["keyword.control"]),
      property: captured(`${from}(?!run\\s)(${name})[ \\t]*(:)(?=\\s|$)(?!\\s*(?:\\d[^\\n]*\\sof\\s))`, [
        "variable.other.property",
        "punctuation.separator.key-value",
      ]),
      way: captured(`${from}(way)\\s+(\\d+)\\s*(:)`, [
        "keyword.declaration",
        "constant.numeric",
        "punctuation.separator.key-value",
      ]),
      item: {
        patterns: [
          captured(`${from}${kind}\\s+(${name})(?=\\s|\\{|/|$)`, ["storage.type", "entity.name.function"]),
          captured(`${from}${kind}(?=\\s*["{])`, ["storage.type"]),
        ],
      },
      day: { name: "constant.other.date.sunwright", match: "(?<![\\w.-])\\d{4}-\\d{2}-\\d{2}(?![\\w-])" },
      quantity: captured(
        `(?<![\\w-])([+\\-−]?(?:\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?|[1-4]/0))[ \\t]*(${unitSource()})(?![\\w/^²³°Ω])`,
        ["constant.numeric", "keyword.other.unit"],
      ),
      count: captured(`(?<![\\w-])([+\\-−]?\\d+(?:\\.\\d+)?)(?:\\s*(x|×)(?=\\s))?`, [
        "constant.numeric",
        "keyword.operator.word",
      ]),
      word: captured(`(?<=\\s)(${words().join("|")})(?=\\s|$)`, ["keyword.operator.word"]),
      flag: captured(`${from}(yes|no)${to}`, ["constant.language.boolean"]),
      mention: captured(`(${name})`, ["variable.other"]),
      mark: {
        patterns: [
          { name: "keyword.operator.range.sunwright", match: "\\.\\." },
          { name: "punctuation.section.block.sunwright", match: "[{}]" },
          { name: "punctuation.section.brackets.sunwright", match: "[\\[\\]]" },
          { name: "punctuation.separator.sunwright", match: "[,:.]" },
        ],
      },
    },
  };
}

function captured(match: string, scopes: readonly string[]): Rule {
  const captures = scopes.map((scope, index) => [index + 1, { name: `${scope}.sunwright` }]);
  return { match, captures: Object.fromEntries(captures) };
}

/** Keywords in the middle of a declaration. */
function words(): string[] {
  const elsewhere = new Set(["use", "part", "run", "way", "measured", "departure", "expect", "yes", "no", "x"]);
  return keywords.filter((word) => !elsewhere.has(word));
}

/** Every unit, in each of its spellings, longest first. */
function unitSource(): string {
  return units
    .map((unit) => unit.name)
    .sort(longestFirst)
    .map((unit) =>
      unit
        .replace(/[/%]/g, "\\$&")
        .replace("ohm", "(?:ohm|[ΩΩ])")
        .replace("deg", "(?:deg|°)")
        .replace(/(?<=[mA])2/g, "[2²]"),
    )
    .join("|");
}

function longestFirst(a: string, b: string): number {
  return b.length - a.length || (a < b ? -1 : 1);
}
