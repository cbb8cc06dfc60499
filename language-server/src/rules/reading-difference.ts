import type { Item, Run } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import type { Finding, Pass } from "./rule.js";

/** What comparisons of a reading with its expectation have in common. */

/** A pass where a difference (a ratio, of either sign) is within its tolerance. */
export function withinTolerance(difference: Figure, limit: Figure, expected: Figure, judge: Judge): Pass | undefined {
  const size = Math.abs(difference.value);
  if (size > limit.value) return undefined;
  const against = `${formatFigure(expected)} expected`;
  const pass = judge.pass(difference, limit, against);
  return { ...pass, utilisation: limit.value === 0 ? undefined : size / limit.value };
}

interface Unlike {
  readonly target: Item | Run;
  readonly read: Figure;
  readonly expected: Figure;
  readonly difference: Figure;
  readonly limit: Figure;
  /** Under which conditions: " at 18 °C". */
  readonly at: string;
}

/** `S1: 395 V was read where 434.3 V is expected at 18 °C: −9.05 %, 5 % is accepted.` */
export function unlike({
  target,
  read,
  expected,
  difference,
  limit,
  at,
}: Unlike): Pick<Finding, "what" | "value" | "limit"> {
  const by = `${difference.value > 0 ? "+" : ""}${formatFigure(difference)}`;
  return {
    what: `${target.id}: ${formatFigure(read)} was read where ${formatFigure(expected)} is expected${at}: ${by}, ${formatFigure(limit)} is accepted.`,
    value: difference,
    limit,
  };
}
