import { NotKnown } from "./judge.js";
import type { Outcome } from "./rule.js";

/**
 * Makes several comparisons of one check, each by itself: what one of them lacks must not hide what another one finds.
 * A comparison that does not arise gives undefined.
 */
export function eachOf(...comparisons: readonly (() => Outcome | readonly Outcome[] | undefined)[]): Outcome[] {
  const outcomes: Outcome[] = [];
  for (const compare of comparisons) {
    const outcome = outcomeOf(compare);
    if (Array.isArray(outcome)) outcomes.push(...outcome);
    else if (outcome) outcomes.push(outcome as Outcome);
  }
  return outcomes;
}

function outcomeOf(compare: () => Outcome | readonly Outcome[] | undefined): Outcome | readonly Outcome[] | undefined {
  try {
    return compare();
  } catch (error) {
    if (error instanceof NotKnown) return error.outcome();
    throw error;
  }
}
