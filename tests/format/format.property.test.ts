import { existsSync, globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { format } from "../../language-server/src/format/format.js";
import { validText, wildText } from "../language/arbitrary.js";
import { commentsOf, fileOf, formatted, meaningOf, problemsOf, withEdits } from "./formatted.js";

function keepsEverything(text: string): void {
  const once = formatted(text);
  expect(meaningOf(once)).toEqual(meaningOf(text));
  expect(problemsOf(once)).toEqual(problemsOf(text));
  expect(formatted(once)).toBe(once);
}

describe("formatting", () => {
  test("never changes what a text says, and doing it again changes nothing", () => {
    fc.assert(
      fc.property(validText, (text) => {
        keepsEverything(text);
        expect(commentsOf(formatted(text))).toEqual(commentsOf(text));
      }),
      { numRuns: 1500 },
    );
  });

  test("leaves a text that cannot be read as whole as it was", () => {
    fc.assert(
      fc.property(wildText, (text) => {
        const { text: once, edits } = format(text, fileOf(text).fragments);
        expect(withEdits(text, edits)).toBe(once);
        expect(once.replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        expect(formatted(once)).toBe(once);
      }),
      { numRuns: 1500 },
    );
  });

  test("its edits make the formatted text", () => {
    fc.assert(
      fc.property(validText, (text) => {
        const { text: once, edits } = format(text, fileOf(text).fragments);
        expect(withEdits(text, edits)).toBe(once);
      }),
      { numRuns: 300 },
    );
  });
});

const examples = fileURLToPath(new URL("../../examples", import.meta.url));

test.runIf(existsSync(examples))("every example keeps its meaning and its comments", () => {
  const names = globSync("**/*.sun", { cwd: examples });
  expect(names.length).toBeGreaterThan(20);
  for (const name of names) {
    const text = readFileSync(join(examples, name), "utf8");
    keepsEverything(text);
    expect(commentsOf(formatted(text)), name).toEqual(commentsOf(text));
  }
});
