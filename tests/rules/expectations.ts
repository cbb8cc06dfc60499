import type { Assessment, Check } from "../../language-server/src/assessment/assessment.js";
import { label } from "../../language-server/src/design/facts.js";

/**
 * What a fixture says about itself, in comments beside its lines:
 *
 *     //! finding string-voltage on S1: INV stands 600 V
 *     //! pass string-voltage on S1 98.7 %: INV          (the share that is used, and against what)
 *     //! pass parallel-mismatch on S2: of the same part (a yes-or-no check has no share)
 *     //! not-checked string-voltage on S1: INV.max-dc-voltage (W1 names no cable)
 *     //! not-checked reading-voltage on S1: measured S1 on 2026-06-12.cell-temperature
 *     //! not-applicable string-fuse on S1: no other string
 *     //! departure tracker-current on INV.pv1: clips
 *     //! problem impossible-value: is negative
 */
export interface Expectation {
  readonly line: number;
  readonly text: string;
  readonly outcome: Check["outcome"]["outcome"] | "problem";
  /** Id of the rule; of the problem for `problem`. */
  readonly id: string;
  readonly thing: string;
  /** In per cent, with the digits it was written with. */
  readonly share?: string;
  readonly fragment?: string;
  readonly missing: readonly string[];
}

const name = "[\\w.-]+";
/** A property that is missing; that of a reading stands behind what the reading is called. */
const property = `(measured (${name} on )?)?${name}`;
const forms: readonly (readonly [Expectation["outcome"], RegExp])[] = [
  ["finding", new RegExp(`^finding (?<id>${name}) on (?<thing>${name}): (?<fragment>.+)$`)],
  ["pass", new RegExp(`^pass (?<id>${name}) on (?<thing>${name})( (?<share>\\d+(\\.\\d+)?) %)?(: (?<fragment>.+))?$`)],
  [
    "not-checked",
    new RegExp(
      `^not-checked (?<id>${name}) on (?<thing>${name}):( (?<missing>${property}(, ${property})*))?( \\((?<fragment>.+)\\))?$`,
    ),
  ],
  ["not-applicable", new RegExp(`^not-applicable (?<id>${name}) on (?<thing>${name}): (?<fragment>.+)$`)],
  ["departure", new RegExp(`^departure (?<id>${name}) on (?<thing>${name}): (?<fragment>.+)$`)],
  ["problem", new RegExp(`^problem (?<id>${name}): (?<fragment>.+)$`)],
];

/** Reads the expectations of a fixture. Throws for a comment that begins like one and is none. */
export function readExpectations(text: string): Expectation[] {
  const found: Expectation[] = [];
  for (const [index, line] of text.split("\n").entries()) {
    const at = line.indexOf("//!");
    if (at < 0) continue;
    found.push(readExpectation(line.slice(at + 3).trim(), index + 1));
  }
  return found;
}

function readExpectation(text: string, line: number): Expectation {
  for (const [outcome, form] of forms) {
    const groups = form.exec(text)?.groups;
    if (!groups) continue;
    const { id = "", thing = "", share, fragment, missing } = groups;
    return { line, text, outcome, id, thing, share, fragment, missing: missing?.split(", ") ?? [] };
  }
  throw new Error(`line ${line} is no expectation that can be read: //! ${text}`);
}

/** What was expected and did not come. Each check answers one expectation only. */
export function unmet(expectations: readonly Expectation[], assessment: Assessment): Expectation[] {
  const checks = new Set(assessment.checks);
  const problems = new Set(assessment.problems);
  return expectations.filter((expectation) => {
    if (expectation.outcome === "problem") {
      const problem = [...problems].find(
        ({ id, message }) => id === expectation.id && message.includes(expectation.fragment ?? ""),
      );
      return !problem || !problems.delete(problem);
    }
    const check = [...checks].find((candidate) => answers(candidate, expectation));
    return !check || !checks.delete(check);
  });
}

function answers({ rule, thing, outcome }: Check, expectation: Expectation): boolean {
  const { id, thing: wanted, fragment = "", share } = expectation;
  if (rule.id !== id || label(thing) !== wanted || outcome.outcome !== expectation.outcome) return false;
  switch (outcome.outcome) {
    case "finding":
      return messageOf(outcome).includes(fragment);
    case "departure":
      return messageOf(outcome.finding).includes(fragment);
    case "not-applicable":
      return outcome.reason.includes(fragment);
    case "not-checked":
      return (
        sameWords(
          outcome.missing.map(({ thing: of, property }) => `${label(of)}.${property}`),
          expectation.missing,
        ) &&
        (outcome.reason ?? "").includes(fragment) &&
        (fragment !== "") === (outcome.reason !== undefined)
      );
    case "pass":
      return sharesAgree(outcome.utilisation, share) && (outcome.against ?? "").includes(fragment);
  }
}

/** A check in the form of an expectation. */
export function describeCheck({ rule, thing, outcome }: Check): string {
  const head = `${outcome.outcome} ${rule.id} on ${label(thing)}`;
  switch (outcome.outcome) {
    case "finding":
      return `${head}: ${messageOf(outcome)}`;
    case "departure":
      return `${head}: ${messageOf(outcome.finding)}`;
    case "not-applicable":
      return `${head}: ${outcome.reason}`;
    case "not-checked": {
      const missing = outcome.missing.map(({ thing: of, property }) => `${label(of)}.${property}`).join(", ");
      return `${head}: ${missing}${outcome.reason ? ` (${outcome.reason})` : ""}`;
    }
    case "pass": {
      const share = outcome.utilisation === undefined ? "" : ` ${outcome.utilisation * 100} %`;
      return `${head}${share}${outcome.against ? `: ${outcome.against}` : ""}`;
    }
  }
}

function messageOf({ what, why, todo }: { what: string; why: string; todo: string }): string {
  return `${what} ${why} ${todo}`;
}

/** To the digits that the comment has. */
function sharesAgree(utilisation: number | undefined, share: string | undefined): boolean {
  if (utilisation === undefined || share === undefined) return utilisation === undefined && share === undefined;
  const decimals = share.split(".")[1]?.length ?? 0;
  return (utilisation * 100).toFixed(decimals) === share;
}

function sameWords(one: readonly string[], other: readonly string[]): boolean {
  return [...one].sort().join() === [...other].sort().join();
}
