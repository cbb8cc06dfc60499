import { describe, expect, test } from "vitest";
import { withArticle, withCapitalArticle } from "../../language-server/src/design/article.js";
import { assessText } from "../rules/designs.js";

const problemsOf = (text: string): string[] => assessText(text).problems.map(({ id, message }) => `${id}: ${message}`);

describe("one mistake is told once", () => {
  test("a part under a kind that does not exist: only the kind is wrong", () => {
    const problems = problemsOf("part Rotary is isolator { poles: 4 }\nisolater Q1 is Rotary\n");
    expect(problems.filter((each) => each.startsWith("wrong-kind"))).toEqual([]);
    expect(problems).toContain("unknown-kind: There is no kind of item called isolater. Did you mean isolator?");
  });

  test("a part of another kind is still told", () => {
    expect(problemsOf("part Rotary is isolator { poles: 4 }\ninverter INV is Rotary\n")).toContain(
      "wrong-kind: Rotary is a part of kind isolator; here an inverter is needed. Name an inverter part.",
    );
  });
});

test("a second site has no name that could be changed", () => {
  expect(problemsOf('site "A" { rules: gb }\nsite "B" { rules: gb }\n')).toContain(
    "duplicate-name: The site of a design is declared once; this one is left out. Write what both say in the first.",
  );
});

test("articles follow the sound of a word", () => {
  expect(["string", "inverter", "spd", "rcd", "generating unit", "unit"].map(withArticle)).toEqual([
    "a string",
    "an inverter",
    "an spd",
    "an rcd",
    "a generating unit",
    "a unit",
  ]);
  expect(["RCBO", "MPP tracker input", "meter"].map(withCapitalArticle)).toEqual([
    "An RCBO",
    "An MPP tracker input",
    "A meter",
  ]);
});
