import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { rules } from "../../language-server/src/rules/index.js";
import { ruleSets } from "../../language-server/src/rules/rule-sets.js";
import { assessText, textProblems } from "./designs.js";
import { readExpectations } from "./expectations.js";

/** What holds for every rule of the list. */
const fixtures = fileURLToPath(new URL("./fixtures", import.meta.url));

test("ids are plain words and each is given once", () => {
  const ids = rules.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
});

describe.each(rules)("$id", (rule) => {
  test("has a fixture for a pass, a finding and a check that is not made", () => {
    const path = `${fixtures}/${rule.id}`;
    const files = existsSync(path) ? readdirSync(path).filter((name) => name.endsWith(".sun")) : [];
    const expected = files
      .flatMap((name) => readExpectations(readFileSync(`${path}/${name}`, "utf8")))
      .filter(({ id }) => id === rule.id);
    const outcomes = new Set(expected.map(({ outcome }) => outcome));
    expect(outcomes).toContain("pass");
    expect(outcomes).toContain("finding");
    expect(outcomes).toContain("not-checked");
  });

  test.each(ruleSets)("names its sources in rule set $id", ({ id }) => {
    const sources = rule.sources[id] ?? [];
    expect(sources.length).toBeGreaterThan(0);
    for (const { title, basis } of sources) {
      expect(title).not.toBe("");
      expect(["read", "memory", "practice", "arithmetic"]).toContain(basis);
    }
  });

  test("explains itself", () => {
    for (const text of [rule.title, rule.what, rule.why]) expect(text).toMatch(/^\p{Lu}.*\.$/su);
  });

  test.each(ruleSets)("its examples do what they claim under $id", ({ id }) => {
    const holds = outcomesOf(rule.examples.holds, id, rule.id);
    expect(holds).toContain("pass");
    expect(holds).not.toContain("finding");
    expect(holds).not.toContain("not-checked");
    expect(outcomesOf(rule.examples.breaks, id, rule.id)).toContain("finding");
  });
});

function outcomesOf(example: string, ruleSet: string, ruleId: string): string[] {
  const assessment = assessText(exampleText(example).replace(/^( *rules:) .*$/m, `$1 ${ruleSet}`));
  expect(assessment.ruleSet.id).toBe(ruleSet);
  expect(textProblems(assessment), "errors of the text").toEqual([]);
  return assessment.checks.filter(({ rule }) => rule.id === ruleId).map(({ outcome }) => outcome.outcome);
}
