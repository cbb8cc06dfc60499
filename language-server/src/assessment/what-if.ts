import type { SourceFile } from "../design/design.js";
import { label } from "../design/facts.js";
import { hypothesisText } from "../design/what-if/hypothesis.js";
import type { Overlay } from "../design/what-if/overlay.js";
import { type Figure, suppositions } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { AssessmentMemory, assess } from "./assess.js";
import type { Assessment, Check, OutcomeChange, OutcomeWord, WhatIf } from "./assessment.js";

/** What is remembered of a design and of what somebody supposes in it. */
export class WhatIfMemory {
  readonly asWritten = new AssessmentMemory();
  readonly supposed = new AssessmentMemory();
}

/**
 * Computes a design as if its text said something else, and holds it against the design as written. Refused hypotheses
 * change nothing and are told in `whatIf`.
 */
export function assessWhatIf(
  files: readonly SourceFile[],
  overlay: Overlay,
  memory = new WhatIfMemory(),
): Assessment & { readonly whatIf: WhatIf } {
  const asWritten = assess(files, memory.asWritten);
  const { files: overlaid, suppositions, refusals } = overlay.over(files);
  const supposed = assess(overlaid, memory.supposed);
  const { hypothetical, changes } = compared(asWritten, supposed);
  const asked = overlay.hypotheses.map(hypothesisText);
  return { ...supposed, whatIf: { asked, suppositions, refusals, asWritten, hypothetical, changes } };
}

function compared(asWritten: Assessment, supposed: Assessment): Pick<WhatIf, "hypothetical" | "changes"> {
  const hypothetical = new Set<Check>();
  const changes: OutcomeChange[] = [];
  const before = byKey(asWritten.checks);
  const after = byKey(supposed.checks);
  for (const [key, checks] of after) {
    const written = before.get(key) ?? [];
    const known = new Set(written.map(textOf));
    for (const check of checks) if (restsOnSupposed(check) || !known.has(textOf(check))) hypothetical.add(check);
    note(written, checks, changes);
  }
  for (const [key, checks] of before) if (!after.has(key)) note(checks, [], changes);
  return { hypothetical, changes };
}

function byKey(checks: readonly Check[]): Map<string, Check[]> {
  const found = new Map<string, Check[]>();
  for (const check of checks) {
    const key = `${check.rule.id} ${label(check.thing)}`;
    const own = found.get(key);
    if (own) own.push(check);
    else found.set(key, [check]);
  }
  return found;
}

function note(written: readonly Check[], supposed: readonly Check[], changes: OutcomeChange[]): void {
  const [before, after] = [worst(written), worst(supposed)];
  const one = supposed[0] ?? written[0];
  if (before !== after && one)
    changes.push({ rule: one.rule.id, thing: label(one.thing), asWritten: before, supposed: after });
}

const ranks: readonly OutcomeWord[] = ["finding", "departure", "not-checked", "pass", "not-applicable"];

function worst(checks: readonly Check[]): OutcomeWord | undefined {
  const words = new Set(checks.map(({ outcome }) => outcome.outcome));
  return ranks.find((word) => words.has(word));
}

function restsOnSupposed({ outcome }: Check): boolean {
  return figuresOf(outcome).some((figure) => suppositions(figure).length > 0);
}

function figuresOf(outcome: Check["outcome"]): Figure[] {
  if (outcome.outcome === "departure") return figuresOf(outcome.finding);
  if (outcome.outcome !== "pass" && outcome.outcome !== "finding") return [];
  return [outcome.value, outcome.limit].filter((figure) => figure !== undefined);
}

const texts = new WeakMap<Check, string>();

/** All that a reader can see of an outcome; checks live on from one assessment to the next, and so does their text. */
function textOf(check: Check): string {
  let text = texts.get(check);
  if (text === undefined) {
    text = described(check);
    texts.set(check, text);
  }
  return text;
}

function described({ outcome }: Check): string {
  const figures = figuresOf(outcome).map(formatFigure);
  switch (outcome.outcome) {
    case "finding":
      return [outcome.outcome, outcome.severity, outcome.what, outcome.why, outcome.todo, ...figures].join(" | ");
    case "departure":
      return [outcome.outcome, outcome.finding.what, outcome.departure.reason, ...figures].join(" | ");
    case "pass":
      return [outcome.outcome, outcome.against, ...figures].join(" | ");
    case "not-applicable":
      return `${outcome.outcome} | ${outcome.reason}`;
    case "not-checked": {
      const missing = outcome.missing.map(({ thing, property }) => `${label(thing)} ${property}`);
      return [outcome.outcome, outcome.reason, ...missing].join(" | ");
    }
  }
}
