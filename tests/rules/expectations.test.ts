import { describe, expect, test } from "vitest";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { assessText } from "./designs.js";
import { readExpectations, unmet } from "./expectations.js";

/** The fixtures are only worth what the reading of their expectations is worth. */

const design = `string S1 is 15 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`;
const assessment = assessText(exampleText(design));

function unmetBy(comment: string): string[] {
  return unmet(readExpectations(`string S1 //! ${comment}`), assessment).map(({ text }) => text);
}

describe("comments that begin like an expectation and are none are refused", () => {
  test.each([
    "find string-voltage on S1: INV",
    "finding string-voltage on S1",
    "finding string-voltage: INV",
    "pass string-voltage on S1 42",
    "pass string-voltage on S1 42.3 % INV",
    "not-checked string-voltage on S1",
    "not-applicable string-voltage on S1",
    "problem",
    "",
  ])("%s", (comment) => {
    expect(() => readExpectations(`string S1 //! ${comment}`)).toThrow(/line 1 is no expectation/);
  });
});

describe("what is said is met", () => {
  test.each([
    "finding string-voltage on S1: INV stands 600 V",
    "pass string-voltage on S1 42.3 %: Hollin430",
    "pass string-voltage on S1 42 %: W1",
    "not-applicable string-fuse on INV.pv1: in parallel",
  ])("%s", (comment) => expect(unmetBy(comment)).toEqual([]));
});

describe("what is not said is not met", () => {
  test.each([
    "finding string-voltage on S1: INV stands 650 V",
    "finding string-voltage on INV: INV stands 600 V",
    "finding building-voltage on S1: INV stands 600 V",
    "pass string-voltage on S1 42.4 %: Hollin430",
    "pass string-voltage on S1: Hollin430",
    "pass string-voltage on S1 42.3 %: Q1",
    "not-checked string-voltage on S1: INV.max-dc-voltage",
    "departure string-voltage on S1: INV stands 600 V",
    "problem unknown-name: Q1",
  ])("%s", (comment) => expect(unmetBy(comment)).toEqual([comment]));
});

test("one check meets one expectation only", () => {
  const twice = "string S1 //! finding string-voltage on S1: INV\n//! finding string-voltage on S1: INV";
  expect(unmet(readExpectations(twice), assessment)).toHaveLength(1);
});
