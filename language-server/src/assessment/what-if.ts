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
  const asked = overlay.hypotheses.map(hypothesisText);
  return Object.assign(supposed, { whatIf: new Compared(asked, suppositions, refusals, asWritten, supposed) });
}

/** Compares check by check, and only when somebody asks. */
class Compared implements WhatIf {
  private writtenByKey: ReadonlyMap<string, readonly Check[]> | undefined;

  constructor(
    readonly asked: WhatIf["asked"],
    readonly suppositions: WhatIf["suppositions"],
    readonly refusals: WhatIf["refusals"],
    readonly asWritten: Assessment,
    private readonly supposed: Assessment,
  ) {}

  isHypothetical(check: Check): boolean {
    return restsOnSupposed(check) || !this.written(keyOf(check)).some((other) => textOf(other) === textOf(check));
  }

  get changes(): OutcomeChange[] {
    const changes: OutcomeChange[] = [];
    const supposed = byKey(this.supposed.checks);
    for (const [key, checks] of supposed) note(this.written(key), checks, changes);
    for (const [key, checks] of byKey(this.asWritten.checks)) if (!supposed.has(key)) note(checks, [], changes);
    return changes;
  }

  private written(key: string): readonly Check[] {
    this.writtenByKey ??= byKey(this.asWritten.checks);
    return this.writtenByKey.get(key) ?? [];
  }
}

function keyOf({ rule, thing }: Check): string {
  return `${rule.id} ${label(thing)}`;
}

function byKey(checks: readonly Check[]): Map<string, Check[]> {
  const found = new Map<string, Check[]>();
  for (const check of checks) {
    const own = found.get(keyOf(check));
    if (own) own.push(check);
    else found.set(keyOf(check), [check]);
  }
  return found;
}

function note(written: readonly Check[], supposed: readonly Check[], changes: OutcomeChange[]): void {
  const [before, after] = [outcomesOf(written), outcomesOf(supposed)];
  const one = supposed[0] ?? written[0];
  if (one && before.join() !== after.join())
    changes.push({ rule: one.rule.id, thing: label(one.thing), asWritten: before, supposed: after });
}

const byWeight: readonly OutcomeWord[] = ["finding", "departure", "pass", "not-checked", "not-applicable"];

function outcomesOf(checks: readonly Check[]): OutcomeWord[] {
  const words = new Set(checks.map(({ outcome }) => outcome.outcome));
  return byWeight.filter((word) => words.has(word));
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
