import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { getL10nPseudoLocalized } from "@vscode/l10n-dev";
import ts from "typescript";
import { beforeAll, describe, expect, test } from "vitest";
import { root } from "../../extension/start/programs.js";
import { interfaceWords } from "../../extension/words.mjs";

const client = join(root, "extension", "src");
const page = join(root, "extension", "panel");
const room = join(root, "language-server", "src", "editor");
const manifest = readFileSync(join(root, "extension", "package.json"), "utf8");
const words: Record<string, string> = JSON.parse(readFileSync(join(root, "extension", "package.nls.json"), "utf8"));
const { contributes, ...head } = JSON.parse(manifest);

function sources(folder: string): { readonly file: string; readonly text: string }[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((file) => ({ file, text: readFileSync(join(folder, file), "utf8") }));
}
/** What stands in a program as text, other than what is said through the reader's language. */
function literalWords(program: string): string[] {
  const found: string[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === "l10n.t") return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      found.push(node.text);
    ts.forEachChild(node, look);
  };
  look(ts.createSourceFile("page.ts", program, ts.ScriptTarget.Latest, true));
  return found;
}
function placeholders(text: string): string[] {
  return [...new Set(text.match(/\{\d+\}/g) ?? [])].sort();
}

describe("the manifest's words", () => {
  test("every key that it names has words, and all words are named", () => {
    const named = new Set([...manifest.matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key));
    expect([...named].sort()).toEqual(Object.keys(words).sort());
    for (const [key, text] of Object.entries(words)) expect(text.trim(), key).not.toBe("");
  });

  test("nothing that people read stands in it literally", () => {
    const literal: string[] = [];
    const look = (value: unknown, path: string): void => {
      if (typeof value === "object" && value !== null)
        for (const [key, inner] of Object.entries(value)) look(inner, `${path}/${key}`);
      else if (
        typeof value === "string" &&
        /\/(title|shortTitle|description|markdownDescription|enumDescriptions\/\d+|altText)$/.test(path) &&
        !/^%.*%$/.test(value)
      )
        literal.push(`${path}: ${value}`);
    };
    look(contributes, "");
    look({ description: head.description }, "");
    // The name of the extension is the same in every language.
    expect(literal).toEqual(["/configuration/title: Sunwright"]);
  });

  test("links of the walkthrough are links in another language too", () => {
    const pseudo = getL10nPseudoLocalized(words) as Record<string, string>;
    expect(Object.keys(pseudo)).toEqual(Object.keys(words));
    for (const [key, text] of Object.entries(words))
      for (const [link] of text.matchAll(/\(command:[\w.]+\)/g)) expect(pseudo[key], key).toContain(link);
  });
});

describe("the interface's words", () => {
  let found: Record<string, unknown>;
  beforeAll(async () => {
    found = await interfaceWords([client, page, room]);
  }, 60_000);

  test("are gathered from the client, the page of the panel and the server's editor room", () => {
    const some = ["New Site", "Operate switches", "{0} not checked", "Working:"];
    expect(Object.keys(found)).toEqual(expect.arrayContaining(some));
  });

  test("are shown through the reader's language, never literally", () => {
    const shown =
      /\b(?:show(?:Information|Warning|Error)Message|setStatusBarMessage)\(\s*["'`]|\b(?:title|placeHolder|placeholder|prompt|tooltip|detail|description|topic)\s*[:=]\s*(?:["']|`[^`$]*[a-z]{2} )/g;
    const literal = sources(client).flatMap(({ file, text }) =>
      [...text.matchAll(shown)].map(({ 0: what, index }) => `${file}: ${what}${text.slice(index, index + 60)}`),
    );
    expect(literal).toEqual([]);
  });

  test("in the page of the panel are none that stand there literally", () => {
    const keys = /^(Arrow(Left|Right|Up|Down)|Enter|Escape|Home|End)$/;
    const literal = sources(page).flatMap(({ file, text }) =>
      literalWords(text)
        .filter((words) => /^[A-Z][a-z]|[a-z]{2} [a-z]{2,}[ :.]/.test(words) && !keys.test(words))
        .map((words) => `${file}: ${words}`),
    );
    expect(literal).toEqual([]);
  });

  test("keep their places in another language", () => {
    const pseudo = getL10nPseudoLocalized(found as Record<string, string>) as Record<string, string>;
    expect(Object.keys(pseudo)).toEqual(Object.keys(found));
    for (const [key, text] of Object.entries(pseudo)) expect(placeholders(text), key).toEqual(placeholders(key));
  });

  test("are nothing that diagnostics wait for: what a rule says is in the rule set's language", () => {
    for (const name of ["diagnostics.ts", "one-cause.ts", "what-if/marks.ts", "lsp/diagnoser.ts", "lsp/publisher.ts"])
      expect(readFileSync(join(room, name), "utf8"), name).not.toContain("l10n");
  });
});

describe("the settings", () => {
  test("are all in the read-me, each with its default", () => {
    const readme = readFileSync(join(root, "README.md"), "utf8");
    for (const [name, { default: usual }] of Object.entries<{ default: unknown }>(
      contributes.configuration.properties,
    )) {
      const row = readme.split("\n").find((line) => line.startsWith(`| \`${name}\` |`));
      expect(row, name).toContain(`| \`${typeof usual === "string" ? usual : JSON.stringify(usual)}\` |`);
    }
  });
});
