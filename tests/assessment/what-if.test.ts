import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { assessWhatIf, WhatIfMemory } from "../../language-server/src/assessment/what-if.js";
import { changeText, suppositionText } from "../../language-server/src/assessment/what-if-text.js";
import { readHypothesis } from "../../language-server/src/design/what-if/hypothesis.js";
import { Overlay } from "../../language-server/src/design/what-if/overlay.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { describeCheck } from "../rules/expectations.js";

const parser = createChunkParser();

function read(text: string): SourceFile {
  const file = new SourceFile("memory:///house.sun", parser);
  file.update(text);
  return file;
}
function overlay(...texts: readonly string[]): Overlay {
  return new Overlay(texts.map((text) => readHypothesis(text)).filter((each) => typeof each !== "string"));
}
function checksOf({ checks }: Assessment): string[] {
  return checks.map(describeCheck).sort();
}

/** What may be supposed of the reference house, each with the change of its text that says the same. */
const hypotheses: readonly (readonly [hypothesis: string, before: string, after: string])[] = [
  ["site.lowest-temperature = -20 degC", "lowest-temperature: -15 degC", "lowest-temperature: -20 degC"],
  ["A.count = 12", "string A is 11 x", "string A is 12 x"],
  ["W4.length = 60 m", "W4 from B to Q2: 23 m", "W4 from B to Q2: 60 m"],
  ["Module430.short-circuit-current = 16.5 A", "short-circuit-current: 13.9 A", "short-circuit-current: 16.5 A"],
  [
    "Hybrid5.pv2.max-current = 10 A",
    "tracker pv2 { voltage-range: 120..430 V  max-current: 16 A",
    "tracker pv2 { voltage-range: 120..430 V  max-current: 10 A",
  ],
  ["Q2.poles = 1", "isolator Q2 is Rotary {", "isolator Q2 is Rotary { poles: 1 "],
  [
    "OLD.RCD2.K3.rated-current = 6 A",
    "breaker K3 is B32 serves SHOWER",
    "breaker K3 is B32 serves SHOWER { rated-current: 6 A }",
  ],
  ["W12.cable = Tails25", "13 m of Twin6", "13 m of Tails25"],
  ["GRID.service-fuse = 100 A", "service-fuse: 80 A", "service-fuse: 100 A"],
];

describe("something supposed", () => {
  test.each(hypotheses)("%s comes out as if it were written", (hypothesis, was, becomes) => {
    const supposed = assessWhatIf([read(referenceHouse)], overlay(hypothesis));
    expect(supposed.whatIf.refusals).toEqual([]);
    expect(referenceHouse).toContain(was);
    const written = assess([read(referenceHouse.replace(was, becomes))]);
    expect(checksOf(supposed).map(unmarked)).toEqual(checksOf(written));
    const asItIs = assess([read(referenceHouse)]);
    expect(checksOf(supposed.whatIf.asWritten)).toEqual(checksOf(asItIs));
    // Each check that comes out otherwise is marked, and is among those of the changed text only.
    const before = new Set(checksOf(asItIs));
    for (const check of supposed.checks)
      if (!before.has(describeCheck(check))) expect(supposed.whatIf.isHypothetical(check)).toBe(true);
  });

  test("nothing is hypothetical that is as the text has it", () => {
    const same = assessWhatIf([read(referenceHouse)], overlay("OLD.note = x"));
    expect(same.checks.filter((check) => same.whatIf.isHypothetical(check))).toEqual([]);
    expect(same.whatIf.changes).toEqual([]);
  });

  test("is said with what the text says in its place, and with what comes out otherwise", () => {
    const { whatIf } = assessWhatIf([read(referenceHouse)], overlay("A.count = 12"));
    expect(whatIf.suppositions.map(suppositionText)).toEqual(["A.count = 12 (written: 11)"]);
    expect(whatIf.changes.map(changeText)).toContain("string-voltage on A: holds as written, finding if so");
  });
});

/** A given figure says that it is supposed; a text that says the same does not. */
function unmarked(check: string): string {
  return check.replaceAll(", what if", "");
}

describe("what is remembered never shows", () => {
  const edits: readonly (readonly [string, string])[] = [
    ["short-circuit-current: 13.9 A", "short-circuit-current: 14.1 A"],
    ["24 m of Solar4", "25 m of Solar4"],
    ["string B is 6 x", "string B is 7 x"],
    ["max-dc-voltage: 500 V", "max-dc-voltage: 450 V"],
    ["isolator Q2 is Rotary", "isolator Q2 is AcSwitch"],
    ["rated-current: 100 A\n", "rated-current: 80 A\n"],
    ["    way 8: rcbo Q5 is Rcbo32 serves INV\n", ""],
  ];
  const step = fc.record({
    edits: fc.subarray([...edits]),
    supposed: fc.subarray(hypotheses.map(([hypothesis]) => hypothesis)),
  });

  test("whatever is typed while something is supposed, and whatever is supposed next", () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 4 }), (steps) => {
        const file = read(referenceHouse);
        const memory = new WhatIfMemory();
        let overlaid = overlay();
        for (const { edits: made, supposed } of steps) {
          file.update(made.reduce((text, [before, after]) => text.replace(before, after), referenceHouse));
          if (supposed.join() !== overlaid.hypotheses.join()) overlaid = overlay(...supposed);
          const remembered = assessWhatIf([file], overlaid, memory);
          const fresh = assessWhatIf([read(file.text)], overlay(...supposed));
          expect(checksOf(remembered)).toEqual(checksOf(fresh));
          expect(checksOf(remembered.whatIf.asWritten)).toEqual(checksOf(fresh.whatIf.asWritten));
        }
      }),
      { numRuns: 25 },
    );
  });
});
