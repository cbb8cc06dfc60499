import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fragment } from "../../language-server/src/design/model.js";
import { commonPrefix, commonSuffix, resplit, split } from "../../language-server/src/language/chunks.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { validText, wildText } from "./arbitrary.js";

const parser = createChunkParser();

function fragments(text: string): readonly Fragment[] {
  const file = new SourceFile("file:///a.sun", parser);
  file.update(text);
  return file.fragments;
}

/** Declarations with absolute offsets and without chunk objects, so that two ways of cutting can be compared. */
function flat(list: readonly Fragment[]): unknown {
  const shift = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(shift);
    if (value === null || typeof value !== "object") return value;
    if ("chunk" in value && "from" in value && "to" in value) {
      const { chunk, from, to } = value as { chunk: { start: number }; from: number; to: number };
      return [chunk.start + from, chunk.start + to];
    }
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shift(inner)]));
  };
  return list.flatMap((fragment) => fragment.declarations.map(shift));
}

function cut(text: string): string[] {
  return split("u", text).chunks.map(({ start, length }) => text.slice(start, start + length));
}

describe("splitting", () => {
  test("one declaration a chunk, with its doc comment in front and the rest of its line behind", () => {
    const text =
      'use "a.sun" // parts\n/** Rear. */\nstring S1 is 2 x P {\n  tilt: 3 deg\n}\nspd F1\nrun W1 from A to B\n';
    expect(cut(text)).toEqual([
      'use "a.sun" // parts\n',
      "/** Rear. */\nstring S1 is 2 x P {\n  tilt: 3 deg\n}\n",
      "spd F1\n",
      "run W1 from A to B\n",
    ]);
  });

  test("a declaration may go on over lines, at any column", () => {
    const text = "string\nS1 is\n11\nx P\n{\n}\nrun W1\nfrom A.\nb to C\n: 3 m\nof D\n";
    expect(cut(text)).toHaveLength(2);
    expect(fragments(text).every((fragment) => !fragment.broken)).toBe(true);
  });

  test("chunks cover the text without gap or overlap", () => {
    fc.assert(
      fc.property(fc.oneof(validText, wildText), (text) => {
        expect(cut(text).join("")).toBe(text);
      }),
    );
  });

  test("cutting a valid text changes nothing of what it means", () => {
    fc.assert(
      fc.property(validText, (text) => {
        const chunk = { uri: "file:///a.sun", start: 0, length: text.length, seen: Number.POSITIVE_INFINITY };
        const whole = parser.parse(chunk, text);
        expect(whole.problems.filter((problem) => problem.id === "syntax")).toEqual([]);
        expect(flat(fragments(text))).toEqual(flat([whole]));
      }),
      { numRuns: 500 },
    );
  });

  test("after any edits the fragments are those of a fresh start", () => {
    const edit = fc.tuple(
      fc.nat(),
      fc.nat({ max: 12 }),
      fc.oneof(wildText, fc.constantFrom("", "{", "}", '"', "/*", "*/", "\n")),
    );
    fc.assert(
      fc.property(fc.oneof(validText, wildText), fc.array(edit, { minLength: 1, maxLength: 8 }), (first, edits) => {
        const file = new SourceFile("file:///a.sun", parser);
        file.update(first);
        for (const [seed, length, insert] of edits) {
          const at = seed % (file.text.length + 1);
          file.update(file.text.slice(0, at) + insert + file.text.slice(at + length));
          expect(file.fragments).toEqual(fragments(file.text));
        }
      }),
      { numRuns: 300 },
    );
  });

  test("an edit inside one declaration keeps every other fragment as the same object", () => {
    const text = Array.from({ length: 50 }, (_, index) => `string S${index} is 11 x P {\n  tilt: 35 deg\n}\n`).join("");
    const file = new SourceFile("file:///a.sun", parser);
    file.update(text);
    const before = file.fragments;
    const at = text.indexOf("S25 is 11");
    file.update(`${text.slice(0, at)}S25 is 112${text.slice(at + 9)}`);
    const changed = file.fragments.filter((fragment, index) => fragment !== before[index]);
    expect(changed).toHaveLength(1);
    expect(changed[0]!.declarations).toMatchObject([{ name: "S25", count: { value: 112 } }]);
    expect(file.fragments[40]!.chunk.start).toBe(text.indexOf("string S40") + 1);
  });

  test("moved chunks know their new start", () => {
    const { chunks } = split("u", "spd A\nspd B\n");
    const again = resplit("u", { chunks, text: "spd A\nspd B\n" }, "spd AB\nspd B\n");
    expect(again).toMatchObject({ from: 0, to: 1 });
    expect(again.chunks[1]).toBe(chunks[1]);
    expect(chunks[1]!.start).toBe(7);
  });
});

describe("common ends of two texts", () => {
  test("are the longest ones", () => {
    const text = fc.string({ unit: fc.constantFrom("a", "b") });
    fc.assert(
      fc.property(text, text, (a, b) => {
        let prefix = 0;
        while (prefix < a.length && prefix < b.length && a[prefix] === b[prefix]) prefix++;
        expect(commonPrefix(a, b)).toBe(prefix);
        let suffix = 0;
        const most = Math.min(a.length, b.length) - prefix;
        while (suffix < most && a[a.length - 1 - suffix] === b[b.length - 1 - suffix]) suffix++;
        expect(commonSuffix(a, b, prefix)).toBe(suffix);
      }),
    );
  });
});
