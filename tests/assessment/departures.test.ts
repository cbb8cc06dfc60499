import { describe, expect, test } from "vitest";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { assessText } from "../rules/designs.js";

/** A string of which a departure answers for the voltage, in a design of some day. */
function departed(date: string, until: string) {
  const assessment = assessText(
    exampleText(`site "Alder Cottage" {
    rules: gb
    lowest-temperature: -10 degC
    ${date && `date: ${date}`}
}
string S1 is 16 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 18 m of Solar4
departure string-voltage on S1 because "until the other inverter comes" { by: "J. Alder"  ${until && `until: ${until}`} }
`),
  );
  const outcomes = assessment.checks.filter(({ rule }) => rule.id === "string-voltage");
  return {
    problems: assessment.problems.filter(({ id }) => id.endsWith("-departure")),
    outcomes: outcomes.map(({ outcome }) => outcome.outcome),
  };
}

describe("the day until which a departure is agreed", () => {
  test("warns of it once the design is of a later day, and leaves the departure one", () => {
    const { problems, outcomes } = departed("2026-06-12", "2026-05-01");
    expect(problems).toMatchObject([
      {
        id: "expired-departure",
        severity: "warning",
        message:
          "This departure from string-voltage was agreed until 2026-05-01; the design is dated 2026-06-12. Decide it again and write a later day, or delete it and mend what is found.",
      },
    ]);
    expect(outcomes).toContain("departure");
    expect(outcomes).not.toContain("finding");
  });
  test.each([
    ["on that day itself", "2026-05-01", "2026-05-01"],
    ["before it", "2026-04-30", "2026-05-01"],
    ["where the design has no date", "", "2026-05-01"],
    ["where the departure has no end", "2026-06-12", ""],
    ["where its day is none of the calendar", "2026-06-12", "2026-02-30"],
  ])("says nothing %s", (_, date, until) => {
    const { problems, outcomes } = departed(date, until);
    expect(problems).toEqual([]);
    expect(outcomes).toContain("departure");
  });
});
