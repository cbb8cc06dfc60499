import * as l10n from "@vscode/l10n";
import type { Assessment, Check } from "../../assessment/assessment.js";
import { noSeverities, type Severities, shownSeverity } from "../../assessment/severities.js";
import { label } from "../../design/facts.js";
import type { Severity } from "../../design/model.js";
import { type Compared, comparedIn, tightestOf } from "../compared.js";
import { counted } from "../counted.js";
import { percent } from "../percent.js";

/** One design in one line. */
export interface Verdict {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly departures: number;
  readonly notChecked: number;
  /** Findings that the settings hide at their place. */
  readonly off: number;
  /** What holds with the least to spare. */
  readonly tightest?: Compared;
}

export function verdictOf(assessment: Assessment, severities: Severities = noSeverities): Verdict {
  const found: Record<Severity, number> = { error: 0, warning: 0, note: 0 };
  let departures = 0;
  let notChecked = 0;
  let off = 0;
  for (const { severity } of assessment.problems) found[severity]++;
  for (const check of assessment.told) {
    const { outcome } = check;
    const severity = shownSeverity(check, severities);
    if (severity === "off") off++;
    else if (severity) found[severity]++;
    if (outcome.outcome === "departure") departures++;
    if (outcome.outcome === "not-checked") notChecked++;
  }
  return {
    errors: found.error,
    warnings: found.warning,
    notes: found.note,
    departures,
    notChecked,
    off,
    tightest: tightestIn(assessment),
  };
}

const tightest = new WeakMap<readonly Check[], { readonly found?: Compared }>();

/** Piece by piece, because a key stroke leaves most of a large design's pieces as they are. */
function tightestIn({ judged }: Assessment): Compared | undefined {
  return tightestOf(judged.flatMap((checks) => tightestAmong(checks) ?? []));
}

function tightestAmong(checks: readonly Check[]): Compared | undefined {
  let known = tightest.get(checks);
  if (!known) {
    // Where a limit only tells two ways apart, as in the choice of a procedure, what is above it passes too.
    const passed = checks
      .filter(({ outcome }) => outcome.outcome === "pass")
      .flatMap(comparedIn)
      .filter(({ share }) => share <= 1);
    known = { found: tightestOf(passed) };
    tightest.set(checks, known);
  }
  return known.found;
}

/** `1 error, 2 warnings, 3 not checked; tightest of what holds: string-voltage on S1, 98.4 % of its limit`. */
export function verdictText({
  errors,
  warnings,
  notes,
  departures,
  notChecked,
  off,
  tightest: closest,
}: Verdict): string {
  const counts = [
    counted(errors, l10n.t("1 error"), (count) => l10n.t("{0} errors", count)),
    counted(warnings, l10n.t("1 warning"), (count) => l10n.t("{0} warnings", count)),
    counted(notes, l10n.t("1 note"), (count) => l10n.t("{0} notes", count)),
    counted(departures, l10n.t("1 departure"), (count) => l10n.t("{0} departures", count)),
    notChecked > 0 ? l10n.t("{0} not checked", notChecked) : "",
    counted(off, l10n.t("1 finding switched off by settings"), (count) =>
      l10n.t("{0} findings switched off by settings", count),
    ),
  ].filter(Boolean);
  const found = counts.length > 0 ? counts.join(", ") : l10n.t("nothing found, everything checked");
  if (!closest) return found;
  const { check, share } = closest;
  return l10n.t(
    "{0}; tightest of what holds: {1} on {2}, {3} of its limit",
    found,
    check.rule.id,
    label(check.thing),
    percent(share),
  );
}
