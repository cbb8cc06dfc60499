import type { Check } from "../assessment/assessment.js";
import { label } from "../design/facts.js";
import type { NotChecked } from "../rules/rule.js";

export function isNotChecked(check: Check): check is Check & { readonly outcome: NotChecked } {
  return check.outcome.outcome === "not-checked";
}

/** What a check lacks: `tilt of S1 and azimuth of S1 are not stated`, or the rule's own reason with what is missing. */
export function missingText({ outcome }: { readonly outcome: NotChecked }): string {
  const names = outcome.missing.map(({ thing, property }) => `${property} of ${label(thing)}`);
  if (outcome.reason) return names.length === 0 ? outcome.reason : `${outcome.reason} (${names.join(", ")})`;
  if (names.length === 0) return "something it needs is not known";
  return `${names.join(" and ")} ${names.length === 1 ? "is" : "are"} not stated`;
}
