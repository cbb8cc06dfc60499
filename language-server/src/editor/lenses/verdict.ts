import type { Assessment } from "../../assessment/assessment.js";
import { label } from "../../design/facts.js";
import type { Severity } from "../../design/model.js";
import { type Compared, comparedIn, tightestOf } from "../compared.js";
import { percent } from "../percent.js";

/** One design in one line. */
export interface Verdict {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly departures: number;
  readonly notChecked: number;
  /** What holds with the least to spare. */
  readonly tightest?: Compared;
}

const verdicts = new WeakMap<Assessment, Verdict>();

export function verdictOf(assessment: Assessment): Verdict {
  let verdict = verdicts.get(assessment);
  if (!verdict) {
    verdict = count(assessment);
    verdicts.set(assessment, verdict);
  }
  return verdict;
}

function count(assessment: Assessment): Verdict {
  const found: Record<Severity, number> = { error: 0, warning: 0, note: 0 };
  let departures = 0;
  let notChecked = 0;
  for (const { severity } of assessment.problems) found[severity]++;
  for (const { rule, outcome } of assessment.told) {
    if (outcome.outcome === "finding") found[outcome.severity ?? rule.severity]++;
    if (outcome.outcome === "departure") departures++;
    if (outcome.outcome === "not-checked") notChecked++;
  }
  // Where a limit only tells two ways apart, as in the choice of a procedure, what is above it passes too.
  const passed = assessment.checks
    .filter(({ outcome }) => outcome.outcome === "pass")
    .flatMap(comparedIn)
    .filter(({ share }) => share <= 1);
  return {
    errors: found.error,
    warnings: found.warning,
    notes: found.note,
    departures,
    notChecked,
    tightest: tightestOf(passed),
  };
}

/** `1 error, 2 warnings, 3 not checked; tightest of what holds: string-voltage on S1, 98.4 % of its limit`. */
export function verdictText({ errors, warnings, notes, departures, notChecked, tightest }: Verdict): string {
  const counts = [
    counted(errors, "error"),
    counted(warnings, "warning"),
    counted(notes, "note"),
    counted(departures, "departure"),
    notChecked > 0 ? `${notChecked} not checked` : "",
  ].filter(Boolean);
  const found = counts.length > 0 ? counts.join(", ") : "nothing found, everything checked";
  if (!tightest) return found;
  const { check, share } = tightest;
  return `${found}; tightest of what holds: ${check.rule.id} on ${label(check.thing)}, ${percent(share)} of its limit`;
}

function counted(count: number, noun: string): string {
  if (count === 0) return "";
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
