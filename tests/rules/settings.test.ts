import { describe, expect, test } from "vitest";
import { settingRows } from "../../language-server/src/design/schema/settings.js";
import { ruleSets } from "../../language-server/src/rules/rule-sets.js";
import { assessText, textProblems } from "./designs.js";

/** Choices on which practitioners differ: a word of the rule set with its reason, or the site's own. */

describe.each(ruleSets.map((set) => [set.id, set] as const))("rule set %s", (_id, set) => {
  test.each(Object.entries(settingRows))("chooses a word for %s, with a reason and a source", (key, row) => {
    const setting = set.setting(row.name);
    expect(setting).toBe(set.settings[key as keyof typeof settingRows]);
    expect(row.words).toContain(setting.word);
    expect(setting.reason.length).toBeGreaterThan(20);
    expect(setting.source.title).not.toBe("");
  });

  test("refuses a choice that does not exist", () => {
    expect(() => set.setting("rcd")).toThrow(RangeError);
  });
});

const site = (limits: string) => `site "Alder Cottage" {\n  rules: gb\n${limits}\n}\n`;

test("a site that says nothing has the rule set's word, with its reason", () => {
  const { judge } = assessText(site(""));
  const { word, origin } = judge.setting("frame-bonding");
  expect([word, origin.kind]).toEqual(["record-decision", "rule-set"]);
  expect(origin.text).toContain("lightning protection");
});

test("a site may choose another word, and where it does so is known", () => {
  const { judge, ...assessment } = assessText(site("  limits { single-pole-rcbo: allowed  ac-voltage-rise: 2 % }"));
  expect(textProblems({ judge, ...assessment })).toEqual([]);
  const { word, origin } = judge.setting("single-pole-rcbo");
  expect([word, origin.kind]).toEqual(["allowed", "stated"]);
  expect(origin.place).toBeDefined();
  expect(judge.limit("ac-voltage-rise").value).toBeCloseTo(0.02, 12);
});

test("a word that is no choice is an error, and the rule set's word holds", () => {
  const assessment = assessText(site("  limits { rcd-side: anywhere }"));
  expect(textProblems(assessment).map((problem) => problem.split(":")[0])).toEqual(["unknown-word"]);
  expect(assessment.judge.setting("rcd-side").word).toBe("own-rcd");
});
