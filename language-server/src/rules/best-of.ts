import type { Outcome } from "./rule.js";

/**
 * Of several devices one of which has to be fit: what is said of the first that holds in every respect; else of the
 * first of which nothing is found, only something is not known; else of the first.
 */
export function bestOf<Candidate>(
  candidates: readonly Candidate[],
  outcomesOf: (candidate: Candidate) => readonly Outcome[],
): readonly Outcome[] {
  const all = candidates.map(outcomesOf);
  return (
    all.find((outcomes) => outcomes.every(({ outcome }) => outcome !== "finding" && outcome !== "not-checked")) ??
    all.find((outcomes) => outcomes.every(({ outcome }) => outcome !== "finding")) ??
    all[0] ??
    []
  );
}
