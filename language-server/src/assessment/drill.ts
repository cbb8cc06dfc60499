import type { ExpectationDeclaration, Problem } from "../design/model.js";
import { foretold } from "./answers.js";
import type { Assessment, Check } from "./assessment.js";

/** How far the findings of a training design and its `expect` lines are the same set. */
export interface Drill {
  readonly expected: number;
  /** Expectations that nothing met. */
  readonly missing: readonly ExpectationDeclaration[];
  /** Findings that no line expects. */
  readonly extra: readonly Check[];
  /** Errors of the text itself that no line expects: with them, what was found says little. */
  readonly errors: readonly Problem[];
}

export function drill(assessment: Assessment): Drill {
  const known = foretold(assessment);
  const isExtra = (check: Check): boolean => check.outcome.outcome === "finding" && !known.checks.has(check);
  const isError = (problem: Problem): boolean => problem.severity === "error" && !known.problems.has(problem);
  return {
    expected: assessment.expected.length,
    missing: assessment.expected.filter(({ met }) => !met).map(({ expectation }) => expectation),
    extra: assessment.checks.filter(isExtra),
    errors: assessment.problems.filter(isError),
  };
}

export function isPassed(drill: Drill): boolean {
  return drill.missing.length + drill.extra.length + drill.errors.length === 0;
}
