import { EmptyFileSystem } from "langium";
import { expect, test } from "vitest";
import { createSunwrightCoreServices } from "../../language-server/src/language/core-module.js";
import { wholeFileParse } from "../../language-server/src/language/whole-file.js";

const { parser } = createSunwrightCoreServices(EmptyFileSystem);

test("a whole text as one tree, with every word in it", () => {
  const text = "spd A // tee\n/** B */\nspd B { p: 3 m }\n";
  const source = wholeFileParse(parser.LangiumParser, text);
  expect(source?.declarations).toMatchObject([{ name: "A" }, { name: "B" }]);
  expect(source?.$cstNode?.root.fullText).toBe(text);
});

test("a text nested too deep has no tree, and nothing breaks", () => {
  expect(wholeFileParse(parser.LangiumParser, `spd A ${"{ a ".repeat(10_000)}`)).toBeUndefined();
});
