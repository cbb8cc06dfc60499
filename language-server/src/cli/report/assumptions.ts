import type { Check } from "../../assessment/assessment.js";
import type { Design } from "../../design/design.js";
import { fact, label } from "../../design/facts.js";
import { assumptions, type Figure, type Given } from "../../physics/figure.js";
import { figureReport } from "./figures.js";
import type { AssumptionReport } from "./report.js";

/** What was assumed on the way to a design's results, each once, with the checks that used it. */
export function assumptionReports(design: Design, checks: readonly Check[]): AssumptionReport[] {
  return [...ruleSetAssumption(design), ...figureAssumptions(checks)];
}

/** Which rules hold is a choice of the site; where nobody made it, every result rests on the one that was taken. */
function ruleSetAssumption({ site }: Design): AssumptionReport[] {
  if (!site) return [{ text: "there is no site: the rule set is the international one", usedBy: [] }];
  const origin = fact(site, "rules")?.origin;
  return origin?.kind === "assumed" ? [{ text: origin.text, usedBy: [] }] : [];
}

function figureAssumptions(checks: readonly Check[]): AssumptionReport[] {
  const found = new Map<string, { given: Given; usedBy: Map<string, { rule: string; thing: string }> }>();
  for (const { rule, thing, outcome } of checks) {
    const user = { rule: rule.id, thing: label(thing) };
    for (const figure of figures(outcome)) {
      for (const given of assumptions(figure)) {
        const { text } = given.origin;
        const entry = found.get(text) ?? { given, usedBy: new Map() };
        entry.usedBy.set(`${user.rule} ${user.thing}`, user);
        found.set(text, entry);
      }
    }
  }
  return [...found].map(([text, { given, usedBy }]) => ({
    text,
    value: figureReport(given),
    usedBy: [...usedBy.values()],
  }));
}

function figures(outcome: Check["outcome"]): Figure[] {
  switch (outcome.outcome) {
    case "pass":
    case "finding":
      return [outcome.value, outcome.limit].filter((figure) => figure !== undefined);
    case "departure":
      return figures(outcome.finding);
    default:
      return [];
  }
}
