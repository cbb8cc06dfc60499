import type { Assessment } from "../../assessment/assessment.js";
import { given, wordOf } from "../../design/facts.js";
import { limitRows } from "../../design/schema/limits.js";
import { settingRows } from "../../design/schema/settings.js";
import { formatFigure } from "../../physics/working.js";
import type { OwnLimitReport } from "./report.js";

/** What the site sets for itself in place of the rule set's limits and choices: a reader has to see what was moved. */
export function ownLimits({ design, ruleSet }: Assessment): OwnLimitReport[] {
  const limits = design.site?.children.find(({ kind }) => kind === "limits");
  if (!limits) return [];
  const figures = Object.values(limitRows).flatMap(({ name }): OwnLimitReport[] => {
    const own = given(limits, name);
    return own ? [{ name, value: formatFigure(own), ruleSet: formatFigure(ruleSet.limit(name)) }] : [];
  });
  const choices = Object.values(settingRows).flatMap(({ name }): OwnLimitReport[] => {
    const own = wordOf(limits, name);
    return own === undefined ? [] : [{ name, value: own, ruleSet: ruleSet.setting(name).word }];
  });
  return [...figures, ...choices];
}
