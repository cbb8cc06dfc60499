import { existsSync, globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { actionsAt } from "../../language-server/src/editor/actions.js";
import { completeAt } from "../../language-server/src/editor/completion/completion.js";
import { marksOf } from "../../language-server/src/editor/diagnostics.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { hoverAt } from "../../language-server/src/editor/hover/hover.js";
import { definitionAt, referencesAt } from "../../language-server/src/editor/navigate.js";
import { renameAt } from "../../language-server/src/editor/rename.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const bad = cottage.replace("8 x", "15 x").replace("9 m of", "90 m of");

function marks(workspace: TestWorkspace, name: string) {
  return marksOf(workspace.view, uriOf(name), { notChecked: "hint" });
}

/** Asks everything about an offset; what it answers lies in the text. */
function ask(workspace: TestWorkspace, name: string, offset: number): void {
  const { view } = workspace;
  const uri = uriOf(name);
  const hover = hoverAt(view, uri, offset, { to: () => "file:///x" });
  if (hover) {
    expect(hover.span.start).toBeLessThanOrEqual(offset);
    expect(hover.span.end).toBeGreaterThanOrEqual(offset);
    expect(hover.markdown).not.toMatch(/undefined|NaN|\[object/);
  }
  for (const { label, documentation = "" } of completeAt(view, uri, offset, {})?.offers ?? [])
    expect(`${label} ${documentation}`).not.toMatch(/undefined|NaN|\[object/);
  definitionAt(view, uri, offset, undefined);
  const renamed = renameAt(view, uri, offset, "Quite-new");
  if ("edits" in renamed) {
    expect(renamed.edits.length).toBe(referencesAt(view, uri, offset, true).length);
    const name = new Set(renamed.edits.map((span) => workspace.text(span.uri)!.slice(span.start, span.end)));
    expect(name.size).toBe(1);
  }
}

/** Texts that differ from a design by cuts and insertions, as typing leaves them. */
const edited = fc
  .array(
    fc.record({
      at: fc.nat(bad.length),
      cut: fc.nat(12),
      add: fc.constantFrom("", "{", "}", '"', " ", "\n", "x", "is ", ": ", "9", "//", "/*"),
    }),
    {
      maxLength: 4,
    },
  )
  .map((edits) => edits.reduce((text, { at, cut, add }) => text.slice(0, at) + add + text.slice(at + cut), bad));

describe("any text", () => {
  test("every question about every place of a design has an answer or none", () => {
    const workspace = new TestWorkspace({ ...files, "cottage.sun": bad });
    for (let offset = 0; offset <= bad.length; offset++) ask(workspace, "cottage.sun", offset);
  });

  test("marks and answers hold while a text is being typed", () => {
    fc.assert(
      fc.property(edited, fc.nat(), (text, place) => {
        const workspace = new TestWorkspace({ ...files, "cottage.sun": bad });
        marks(workspace, "cottage.sun");
        workspace.write("cottage.sun", text);
        for (const { span } of marks(workspace, "cottage.sun")) {
          expect(span.end).toBeLessThanOrEqual(text.length);
          expect(span.start).toBeGreaterThanOrEqual(0);
        }
        ask(workspace, "cottage.sun", place % (text.length + 1));
      }),
      { numRuns: 150 },
    );
  });

  test("whatever was typed in between, the same text gives the same marks", () => {
    const fresh = marks(new TestWorkspace({ ...files, "cottage.sun": bad }), "cottage.sun");
    fc.assert(
      fc.property(fc.array(edited, { minLength: 1, maxLength: 4 }), (texts) => {
        const workspace = new TestWorkspace({ ...files, "cottage.sun": bad });
        for (const text of texts) {
          workspace.write("cottage.sun", text);
          marks(workspace, "cottage.sun");
        }
        workspace.write("cottage.sun", bad);
        expect(marks(workspace, "cottage.sun")).toEqual(fresh);
      }),
      { numRuns: 60 },
    );
  });

  test("every quick fix leaves a text that can be read", () => {
    const workspace = new TestWorkspace({ ...files, "cottage.sun": bad });
    const actions = actionsAt(workspace.view, uriOf("cottage.sun"), 0, bad.length);
    expect(actions.length).toBeGreaterThan(5);
    for (const { title, changes } of actions) {
      for (const uri of new Set(changes.map((change) => change.uri))) {
        const name = uri.slice(uri.lastIndexOf("/") + 1);
        const before = workspace.text(uri)!;
        const after = new TestWorkspace({
          [name]: applied(
            before,
            changes.filter((change) => change.uri === uri),
          ),
        });
        const broken = after.fragments(uri).filter((fragment) => fragment.broken);
        expect(broken, title).toEqual([]);
      }
    }
  });
});

const examples = fileURLToPath(new URL("../../examples", import.meta.url));

test.runIf(existsSync(examples))("every question about every word of the examples", () => {
  const texts = Object.fromEntries(
    globSync("**/*.sun", { cwd: examples }).map((name) => [name, readFileSync(join(examples, name), "utf8")]),
  );
  const workspace = new TestWorkspace(texts);
  for (const [name, text] of Object.entries(texts)) {
    marks(workspace, name);
    for (const { index } of text.matchAll(/[^\s{}]+/g)) ask(workspace, name, index);
  }
});
