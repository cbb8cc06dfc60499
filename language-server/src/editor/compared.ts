import type { Check } from "../assessment/assessment.js";
import { hasMargin } from "../assessment/margin.js";
import type { Figure } from "../physics/figure.js";

/** A figure that a check held against its limit. */
export interface Compared {
  readonly check: Check;
  readonly value: Figure;
  readonly limit: Figure;
  /** Share of the limit that is used; above 1 where it does not hold. */
  readonly share: number;
  readonly against?: string;
}

/** What a check compares; nothing for yes-or-no checks and for what could not be checked. */
export function comparedIn(check: Check): Compared[] {
  const { outcome } = check;
  const compared = outcome.outcome === "departure" ? outcome.finding : outcome;
  if (compared.outcome !== "pass" && compared.outcome !== "finding") return [];
  const { value, limit } = compared;
  if (!value || !limit || limit.value === 0) return [];
  const against = compared.outcome === "pass" ? compared.against : undefined;
  return [{ check, value, limit, share: shareOf(compared, value, limit), against }];
}

function shareOf(
  compared: { readonly outcome: string; readonly utilisation?: number },
  value: Figure,
  limit: Figure,
): number {
  if (compared.utilisation !== undefined) return compared.utilisation;
  const share = value.value / limit.value;
  // What breaks a lower bound uses more of it than there is, too.
  return compared.outcome === "finding" && share > 0 && share < 1 ? 1 / share : share;
}

/** The comparison with the least to spare, of those that have a margin at all. */
export function tightestOf(compared: readonly Compared[]): Compared | undefined {
  let tightest: Compared | undefined;
  for (const one of compared)
    if (hasMargin(one.value, one.limit) && (!tightest || one.share > tightest.share)) tightest = one;
  return tightest;
}
