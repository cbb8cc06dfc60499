import { expect, test } from "vitest";
import { sunwrightHere } from "../cli/program.js";
import { root } from "./examples.js";

test("every example has the one look of the language", async () => {
  const { code, out } = await sunwrightHere(["format", "--check", "examples"], root);
  expect(out).toMatch(/^\d+ files, nothing to format\n$/);
  expect(code).toBe(0);
});
