import type { Assessment, Check, Notice } from "./assessment.js";
import { placeOf, placeOfFinding } from "./spots.js";

/** Everything to be shown at a place of the text, in the order of the text within each file. */
export function notices(assessment: Assessment): Notice[] {
  const list: Notice[] = [];
  for (const problem of assessment.problems) {
    const { id, severity, message, place, related = [], unnecessary } = problem;
    list.push({ id, severity, message, place, related, unnecessary, problem });
  }
  for (const check of assessment.told) {
    const notice = noticeOfCheck(check);
    if (notice) list.push(notice);
  }
  return list;
}

/** What is shown of a check: a finding or a departure; the other outcomes are silent at their place. */
export function noticeOfCheck(check: Check): Notice | undefined {
  const { outcome, rule } = check;
  if (outcome.outcome === "finding") {
    const { what, why, todo, spot, related = [], severity = rule.severity } = outcome;
    return {
      id: rule.id,
      severity,
      message: `${what} ${why} ${todo}`,
      place: placeOfFinding(spot),
      related: related.map((entry) => ({ place: placeOf(entry.spot), message: entry.message })),
      check,
    };
  }
  if (outcome.outcome === "departure") {
    const { finding, departure } = outcome;
    return {
      id: rule.id,
      severity: "note",
      message: `Departed from: ${finding.what} Reason given: ${departure.reason}`,
      place: placeOfFinding(finding.spot),
      related: [{ place: departure.place, message: "the departure" }],
      check,
    };
  }
  return undefined;
}
