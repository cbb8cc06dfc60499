import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { isKeyword, textMateGrammar, units } from "@sunwright/grammar";
import { beforeAll, describe, expect, test } from "vitest";
import oniguruma from "vscode-oniguruma";
import textmate, { type IGrammar } from "vscode-textmate";
import { kindRows } from "../../language-server/src/design/schema/index.js";

/** Tokenises with the very library that editors use. */
let grammar: IGrammar;
beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await oniguruma.loadWASM(readFileSync(wasm));
  const kinds = kindRows.map(({ kind }) => kind).filter((kind) => !isKeyword(kind));
  const raw = textmate.parseRawGrammar(JSON.stringify(textMateGrammar(kinds)), "sunwright.json");
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: () => Promise.resolve(raw),
  });
  grammar = (await registry.loadGrammar("source.sunwright"))!;
});

/** Each word of a line with its innermost scope, blanks left out. */
function colours(line: string): string[] {
  return grammar
    .tokenizeLine(line, null)
    .tokens.map(({ startIndex, endIndex, scopes }) => [line.slice(startIndex, endIndex), scopes.at(-1)!] as const)
    .filter(([word]) => word.trim() !== "")
    .map(([word, scope]) => `${word.trim()} ${scope.replace(".sunwright", "")}`);
}

describe("colouring", () => {
  test("an item with its count and part", () => {
    expect(colours("string S1 is 11 x Hollin430 {")).toEqual([
      "string storage.type",
      "S1 entity.name.function",
      "is keyword.operator.word",
      "11 constant.numeric",
      "x keyword.operator.word",
      "Hollin430 variable.other",
      "{ punctuation.section.block",
    ]);
  });

  test("a run", () => {
    expect(colours("run W1 from S1 to INV.pv1: 18 m of Solar4 // why")).toEqual([
      "run keyword.declaration",
      "W1 entity.name.function",
      "from keyword.operator.word",
      "S1 variable.other",
      "to keyword.operator.word",
      "INV variable.other",
      ". punctuation.separator",
      "pv1 variable.other",
      ": punctuation.separator",
      "18 constant.numeric",
      "m keyword.other.unit",
      "of keyword.operator.word",
      "Solar4 variable.other",
      "// why comment.line.double-slash",
    ]);
  });

  test("properties, ranges, flags, days and texts", () => {
    expect(colours('  voltage-range: 80..550 V  lockable: yes  location: "plant \\" wall"')).toEqual([
      "voltage-range variable.other.property",
      ": punctuation.separator.key-value",
      "80 constant.numeric",
      ".. keyword.operator.range",
      "550 constant.numeric",
      "V keyword.other.unit",
      "lockable variable.other.property",
      ": punctuation.separator.key-value",
      "yes constant.language.boolean",
      "location variable.other.property",
      ": punctuation.separator.key-value",
      '" string.quoted.double',
      "plant string.quoted.double",
      '\\" constant.character.escape',
      "wall string.quoted.double",
      '" string.quoted.double',
    ]);
    expect(colours("measured S1 on 2026-06-12 {")).toContain("2026-06-12 constant.other.date");
  });

  test("a way of a board and a part sheet", () => {
    expect(colours('way 8: breaker K8 is B20 serves "garage"').slice(0, 5)).toEqual([
      "way keyword.declaration",
      "8 constant.numeric",
      ": punctuation.separator.key-value",
      "breaker storage.type",
      "K8 entity.name.function",
    ]);
    expect(colours("part Brook4 is inverter {").slice(0, 4)).toEqual([
      "part keyword.declaration",
      "Brook4 entity.name.type",
      "is keyword.operator.word",
      "inverter storage.type",
    ]);
    expect(colours('use "parts.sun"')[0]).toBe("use keyword.control.import");
    expect(colours('site "Alder Cottage" {')[0]).toBe("site storage.type");
  });

  test("every unit of the table is coloured as one, Unicode spellings too", () => {
    const all = [...units.map(({ name }) => name), "Ω", "mm²", "°C", "W/m²", "/km²/yr", "kA²s", "MΩ"];
    const plain = all.filter((unit) => !colours(`p: 18 ${unit}`).includes(`${unit} keyword.other.unit`));
    expect(plain).toEqual([]);
  });

  test("every kind of the schema is coloured as one", () => {
    const kinds = kindRows.map(({ kind }) => kind).filter((kind) => !isKeyword(kind));
    expect(kinds.filter((kind) => colours(`${kind} A1 {`)[0] !== `${kind} storage.type`)).toEqual([]);
  });

  test("an unclosed text ends with its line, a doc comment goes on", () => {
    const first = grammar.tokenizeLine('  location: "plant', null);
    const second = grammar.tokenizeLine("/** Rear", first.ruleStack);
    expect(second.tokens.at(-1)!.scopes.at(-1)).toBe("comment.block.documentation.sunwright");
    const third = grammar.tokenizeLine(" slope */ spd", second.ruleStack);
    expect(third.tokens.at(-1)!.scopes.at(-1)).not.toContain("comment");
  });
});

describe("language configuration", () => {
  const path = new URL("../../extension/language-configuration.json", import.meta.url);
  const configuration = JSON.parse(readFileSync(path, "utf8")) as {
    wordPattern: string;
    onEnterRules: { beforeText: string; afterText?: string; previousLineText?: string }[];
    indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
  };

  test("a name with hyphens is one word for the editor", () => {
    const words = "open-circuit-voltage: 38.9 V // S-1 Dach-Süd x-".match(new RegExp(configuration.wordPattern, "g"));
    expect(words).toEqual(["open-circuit-voltage", "38.9", "V", "S-1", "Dach-Süd", "x"]);
  });

  test("Enter in a doc comment goes on with a star, and after it does not", () => {
    const rules = configuration.onEnterRules.map(({ beforeText }) => new RegExp(beforeText));
    expect(rules[0]!.test("/** Rear slope")).toBe(true);
    expect(rules[0]!.test("/** Rear slope */")).toBe(false);
    expect(rules[2]!.test(" * no shading")).toBe(true);
    expect(rules[3]!.test(" */")).toBe(true);
  });

  test("an open brace indents, a closed one does not", () => {
    const { increaseIndentPattern, decreaseIndentPattern } = configuration.indentationRules;
    const increase = new RegExp(increaseIndentPattern);
    expect(["spd F {", "spd F { // tee", "spd F { a: 3 }", "}"].map((line) => increase.test(line))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(new RegExp(decreaseIndentPattern).test("  }")).toBe(true);
  });
});
