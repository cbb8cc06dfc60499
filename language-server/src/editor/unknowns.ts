import type { Check } from "../assessment/assessment.js";
import { label } from "../design/facts.js";
import type { NotChecked } from "../rules/rule.js";

export function isNotChecked(check: Check): check is Check & { readonly outcome: NotChecked } {
  return check.outcome.outcome === "not-checked";
}

/** What a check lacks: `tilt of S1 and azimuth of S1 are not stated`, or the rule's own reason. */
export function missingText({ outcome }: { readonly outcome: NotChecked }): string {
  const names = outcome.missing.map(({ thing, property }) => `${property} of ${label(thing)}`);
  const stated = names.length === 0 ? "" : `${names.join(" and ")} ${names.length === 1 ? "is" : "are"} not stated`;
  return [outcome.reason, stated].filter(Boolean).join("; ") || "something it needs is not known";
}
