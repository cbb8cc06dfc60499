import type { Zone } from "../circuit/array.js";
import type { Circuit } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import type { Design } from "../design/design.js";
import type { DepartureDeclaration, ExpectationDeclaration, Problem, Severity } from "../design/model.js";
import type { Thing } from "../design/things.js";
import type { Refusal, Supposition } from "../design/what-if/overlay.js";
import type { Place } from "../place.js";
import type { Judge } from "../rules/judge.js";
import type { Finding, NotApplicable, NotChecked, Pass, Rule } from "../rules/rule.js";
import type { RuleSet } from "../rules/rule-set.js";

/** A finding that the designer has answered for in writing. */
export interface Departed {
  readonly outcome: "departure";
  readonly finding: Finding;
  readonly departure: DepartureDeclaration;
}

/** One rule held against one thing: exactly one of five outcomes. */
export interface Check {
  readonly rule: Rule;
  readonly thing: Thing;
  readonly outcome: Pass | Finding | Departed | NotApplicable | NotChecked;
}

/** Everything computed about one design. Every output is a view of this. */
export interface Assessment {
  readonly design: Design;
  readonly circuit: Circuit;
  readonly zones: readonly Zone[];
  readonly plants: readonly Plant[];
  readonly ruleSet: RuleSet;
  /** For what is worked out on demand: the fixes of a finding. */
  readonly judge: Judge;
  /** Every check before departures answer findings, piece by piece: where no edit has reached, the list is as before. */
  readonly judged: readonly (readonly Check[])[];
  /** Every check. Put together when somebody asks: in a large design nearly all of them pass. */
  readonly checks: readonly Check[];
  /** The checks that have something to tell: findings, departures, and what could not be checked. */
  readonly told: readonly Check[];
  /** What is wrong with the text, its names, its wiring, its departures and expectations. */
  readonly problems: readonly Problem[];
  /** Findings and problems that an `expect` line foretold. */
  readonly expected: readonly { readonly expectation: ExpectationDeclaration; readonly met: boolean }[];
  /** Present where somebody asked what would be if the text said something else: then nothing here is of the text alone. */
  readonly whatIf?: WhatIf;
}

/** How an assessment of something supposed stands to the assessment of the text as it is. */
export interface WhatIf {
  /** Everything that was asked, as it was written. */
  readonly asked: readonly string[];
  readonly suppositions: readonly Supposition[];
  /** What was asked and cannot be supposed of this design; the rest was. */
  readonly refusals: readonly Refusal[];
  readonly asWritten: Assessment;
  /** Whether a check rests on something supposed, or comes out otherwise than for the text as it is. */
  isHypothetical(check: Check): boolean;
  /** Checks whose outcome is another one than that of the text. */
  readonly changes: readonly OutcomeChange[];
}

export interface OutcomeChange {
  readonly rule: string;
  readonly thing: string;
  /** Outcomes of the rule on that thing, the weightiest first; empty where there is no such check. */
  readonly asWritten: readonly OutcomeWord[];
  readonly supposed: readonly OutcomeWord[];
}
export type OutcomeWord = Check["outcome"]["outcome"];

/** Something to show at a place: the common form of findings, departures and problems. */
export interface Notice {
  readonly id: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly related: readonly { readonly place: Place; readonly message: string }[];
  readonly unnecessary?: boolean;
  readonly check?: Check;
  readonly problem?: Problem;
}
