import type { OutcomeChange } from "../../assessment/assessment.js";
import type { Severity } from "../../design/model.js";

/**
 * The result of `sunwright check` as plain data, documented by `schema/check.schema.json`. The text that people read is
 * printed from this and from nothing else, so the two cannot disagree.
 *
 * Fields are only ever added; when one has to change its meaning, `schemaVersion` goes up.
 */
export const schemaVersion = 1;
export const schemaId = "urn:sunwright:schema:check:1";

export interface Report {
  readonly $schema: typeof schemaId;
  readonly schemaVersion: typeof schemaVersion;
  readonly tool: { readonly name: "sunwright"; readonly version: string };
  readonly caution: string;
  /** What was supposed with --set; absent where results are of the text as it is. */
  readonly whatIf?: readonly string[];
  readonly summary: Summary;
  /** What was asked for and could not be read. */
  readonly unreadable: readonly Unreadable[];
  readonly files: readonly FileReport[];
}

export interface Summary {
  readonly files: number;
  readonly designs: number;
  /** Findings and problems together, each once however many designs share it. */
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly outcomes: Outcomes;
}

/** How many checks had which of the five outcomes. */
export interface Outcomes {
  readonly passes: number;
  readonly findings: number;
  readonly departures: number;
  readonly notApplicable: number;
  readonly notChecked: number;
}

export interface Unreadable {
  readonly file: string;
  /** What is wrong and what to do. */
  readonly message: string;
}

/** A file of parts, or any other file that a checked design uses, has only what is wrong with its text. */
export type FileReport = TextReport | DesignReport;

export interface TextReport {
  readonly kind: "text";
  readonly file: string;
  readonly problems: readonly ProblemReport[];
}

export interface DesignReport extends Omit<TextReport, "kind"> {
  readonly kind: "design";
  /** Title of the site; absent where the file declares none. */
  readonly site?: string;
  /** Every file that the design is read from besides its own, in the order in which they are used. */
  readonly uses: readonly string[];
  /** True where some text could not be read: results are of what could, and no finding is reported from the rest. */
  readonly incomplete: boolean;
  readonly ruleSet: RuleSetReport;
  /** What the site sets for itself in place of the rule set's. Absent where it sets nothing. */
  readonly ownLimits?: readonly OwnLimitReport[];
  readonly outcomes: Outcomes;
  /** The pass that uses most of its limit. */
  readonly tightest?: PassReport;
  /** Findings that the settings hide at their place; they are counted, and fail nothing. Absent where there are none. */
  readonly switchedOff?: readonly SwitchedOffReport[];
  readonly findings: readonly FindingReport[];
  readonly departures: readonly DepartureReport[];
  readonly passes: readonly PassReport[];
  readonly notApplicable: readonly NotApplicableReport[];
  readonly notChecked: readonly NotCheckedReport[];
  readonly assumptions: readonly AssumptionReport[];
  /** Present where something was supposed: then every result above is of the supposed design. */
  readonly whatIf?: WhatIfReport;
}

export interface WhatIfReport {
  /** Empty where this design has nothing of that name. */
  readonly suppositions: readonly SuppositionReport[];
  /** Checks whose outcome is another one than that of the text as it is. */
  readonly changes: readonly OutcomeChange[];
}

/** "S1.count = 12 (written: 10)". */
export interface SuppositionReport {
  readonly target: string;
  readonly property: string;
  readonly value: string;
  /** What the text says. */
  readonly written?: string;
  /** What is assumed where it says nothing. Neither: nothing is known. */
  readonly assumed?: string;
  readonly text: string;
}

export interface RuleSetReport {
  readonly id: string;
  readonly title: string;
  readonly editions: readonly { readonly title: string; readonly edition: string }[];
}

/** A limit or a choice of the site; `value` and `ruleSet` as they are printed. */
export interface OwnLimitReport {
  readonly name: string;
  readonly value: string;
  readonly ruleSet: string;
}

/** Lines and columns count from 1; columns in UTF-16 units, as editors count them. The end is exclusive. */
export interface Location {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface RelatedReport {
  readonly message: string;
  readonly location: Location;
}

export interface ProblemReport {
  readonly id: string;
  readonly severity: Severity;
  readonly message: string;
  readonly location: Location;
  readonly related: readonly RelatedReport[];
  /** An `expect` line foretold it. */
  readonly expected: boolean;
}

/** What every outcome has: which rule was held against which thing. */
interface CheckReport {
  readonly rule: string;
  readonly thing: string;
  /** Rests on something supposed, or comes out otherwise than it does for the text as it is. */
  readonly hypothetical?: true;
}

export interface FindingReport extends CheckReport {
  readonly severity: Severity;
  /** The whole message: what is wrong, why it matters, what to do. */
  readonly message: string;
  readonly what: string;
  readonly why: string;
  readonly todo: string;
  readonly location: Location;
  readonly related: readonly RelatedReport[];
  readonly expected: boolean;
  readonly value?: FigureReport;
  readonly limit?: FigureReport;
  readonly sources: readonly string[];
  readonly workings?: readonly string[];
}

export interface SwitchedOffReport extends CheckReport {
  /** What the rule would say. */
  readonly severity: Severity;
  readonly what: string;
}

export interface DepartureReport extends CheckReport {
  /** Always `note`: a departure is shown everywhere and fails nothing. */
  readonly severity: Severity;
  readonly message: string;
  /** What the rule found. */
  readonly what: string;
  readonly reason: string;
  readonly location: Location;
  readonly related: readonly RelatedReport[];
  readonly departure: Location;
  readonly workings?: readonly string[];
}

export interface PassReport extends CheckReport {
  readonly location: Location;
  readonly value?: FigureReport;
  readonly limit?: FigureReport;
  /** Share of the limit that is used, 0 to 1. */
  readonly utilisation?: number;
  /** What was compared with what, or what holds in a yes-or-no check. */
  readonly against?: string;
  readonly workings?: readonly string[];
}

export interface NotApplicableReport extends CheckReport {
  readonly reason: string;
}

export interface NotCheckedReport extends CheckReport {
  readonly missing: readonly { readonly thing: string; readonly property: string }[];
  readonly reason?: string;
}

export interface AssumptionReport {
  readonly text: string;
  readonly value?: FigureReport;
  /** Empty for what every check rests on. */
  readonly usedBy: readonly CheckReport[];
}

export interface FigureReport {
  readonly symbol: string;
  /** In `unit`; null where the figure is no finite number. */
  readonly value: number | null;
  /** Empty for a plain number. */
  readonly unit: string;
  /** As people read it: `465.3 V`. */
  readonly text: string;
}
