import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { markdownFenceGrammar, textMateGrammar } from "@sunwright/grammar";
import { beforeAll, describe, expect, test } from "vitest";
import oniguruma from "vscode-oniguruma";
import textmate, { type IGrammar, type IRawGrammar } from "vscode-textmate";

/** A page's own grammar with as little in it as can be: only what is injected gives colours. */
const page = { scopeName: "text.html.markdown", patterns: [], repository: {} };
let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await oniguruma.loadWASM(readFileSync(wasm));
  const grammars: Record<string, object> = {
    "text.html.markdown": page,
    "markdown.sunwright.codeblock": markdownFenceGrammar(),
    "source.sunwright": textMateGrammar([]),
  };
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (scope) => (grammars[scope] as IRawGrammar | undefined) ?? null,
    getInjections: (scope) => (scope === "text.html.markdown" ? ["markdown.sunwright.codeblock"] : []),
  });
  grammar = (await registry.loadGrammar("text.html.markdown"))!;
});

/** Whether each line is coloured as our language. */
function ours(lines: readonly string[]): boolean[] {
  let stack = textmate.INITIAL;
  return lines.map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    return tokens.some(({ scopes }) => scopes.includes("meta.embedded.block.sunwright"));
  });
}

describe("blocks of designs in Markdown", () => {
  test.each(["```sun", "~~~sun", "```sunwright", "```sun chart=margins", "````sun"])("%s begins one", (first) => {
    const last = first.replace(/[^`~].*/, "");
    expect(ours(["words", first, "string S1 is 3 x P", "// why", last, "words"])).toEqual([
      false,
      false,
      true,
      true,
      false,
      false,
    ]);
  });

  test.each(["```sunny", "```js", "sun"])("%s does not", (first) => {
    expect(ours([first, "string S1 is 3 x P"])).toEqual([false, false]);
  });
});
