import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Assessment, Check } from "../../language-server/src/assessment/assessment.js";
import { label } from "../../language-server/src/design/facts.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { rules } from "../../language-server/src/rules/index.js";
import { designOf, type TextDesign, textAfter, textProblems } from "./designs.js";
import { describeCheck, readExpectations, unmet } from "./expectations.js";
import { findingsPage } from "./findings-page.js";

/**
 * Every `fixtures/<rule>/<name>.sun` is a design, after the parts that all examples share, with what must be said about
 * it in comments beside its lines (see `expectations.ts`). Beside it stands what its findings look like.
 */
const folder = fileURLToPath(new URL("./fixtures", import.meta.url));
const ruleIds = new Set(rules.map(({ id }) => id));

for (const ruleId of readdirSync(folder)) {
  describe(ruleId, () => {
    test("is the id of a rule", () => expect(ruleIds).toContain(ruleId));
    const names = readdirSync(`${folder}/${ruleId}`).filter((name) => name.endsWith(".sun"));
    for (const name of names) {
      test(name, async () => {
        const own = readFileSync(`${folder}/${ruleId}/${name}`, "utf8");
        const expectations = readExpectations(own);
        expect(expectations, "expectations in the file").not.toHaveLength(0);
        for (const { id, outcome } of expectations)
          if (outcome !== "problem") expect(ruleIds, "rules that expectations name").toContain(id);

        const design = designOf(exampleText(own));
        const { assessment } = design;
        if (!expectations.some(({ outcome }) => outcome === "problem"))
          expect(textProblems(assessment), "errors of the text").toEqual([]);
        const missed = unmet(expectations, assessment).map(({ line, text: wanted }) => `line ${line}: ${wanted}`);
        expect(missed, `expectations that nothing met; there is:\n${said(assessment, ruleId)}`).toEqual([]);

        const foretold = expectations.filter(({ outcome, id }) => outcome === "finding" && id === ruleId);
        const found = assessment.checks.filter(
          ({ rule, outcome }) => rule.id === ruleId && outcome.outcome === "finding",
        );
        expect(found.length, `findings, of which ${foretold.length} are foretold:\n${said(assessment, ruleId)}`).toBe(
          foretold.length,
        );
        const page = findingsPage(design, ruleId);
        if (page !== "")
          await expect(page).toMatchFileSnapshot(`${folder}/${ruleId}/${name.slice(0, -4)}.findings.txt`);
        for (const check of found) expectFixesToMend(design, check);
      });
    }
  });
}

/** Every fix that is offered changes the text, leaves it readable, and takes away what was found. */
function expectFixesToMend(design: TextDesign, check: Check): void {
  const { rule, thing, outcome } = check;
  if (outcome.outcome !== "finding") return;
  for (const fix of outcome.fixes?.(design.assessment.judge) ?? []) {
    const after = textAfter(design, fix);
    expect(after, `${fix.title}: changes the text`).toBeDefined();
    const mended = designOf(after ?? "").assessment;
    const before = textProblems(design.assessment);
    expect(
      textProblems(mended).filter((problem) => !before.includes(problem)),
      `${fix.title}: new errors`,
    ).toEqual([]);
    const left = mended.checks.filter(
      (other) =>
        other.rule === rule &&
        label(other.thing) === label(thing) &&
        other.outcome.outcome === "finding" &&
        other.outcome.what === outcome.what,
    );
    expect(left, `${fix.title}: what is still found`).toEqual([]);
  }
}

/** All that was said by one rule, for the message of a test that fails. */
function said({ checks }: Assessment, ruleId: string): string {
  return checks
    .filter(({ rule }) => rule.id === ruleId)
    .map((check) => `  ${describeCheck(check)}`)
    .join("\n");
}
