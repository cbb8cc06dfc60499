import { toSi } from "@sunwright/grammar";
import { type LimitKey, limitKey, limitRows } from "../design/schema/limits.js";
import { type SettingKey, settingKey } from "../design/schema/settings.js";
import type { AmpacityColumn, FactorTable } from "../physics/ampacity.js";
import type { ColdFactors } from "../physics/cold-factors.js";
import type { Given, Source } from "../physics/figure.js";
import type { StringFuseRule } from "../physics/string-fuse.js";
import type { WithstandTable } from "../physics/surge.js";
import type { AcRules } from "./ac-rules.js";
import type { LabelTexts } from "./labels.js";

/** A limit of a rule set: a figure that formulas take as it is, with who says so and why this one. */
export interface Limit extends Given {
  readonly source: Source;
  readonly reason?: string;
}

/** The word that a rule set chooses where practitioners differ, with who says so and why this one. */
export interface Setting {
  readonly word: string;
  readonly source: Source;
  readonly reason: string;
}

/** A standard or guide that a rule set is made from. */
export interface Edition {
  readonly title: string;
  readonly edition: string;
  readonly source: Source;
}

/** Test voltage and least resistance by system voltage, IEC 62446-1. V and Ω. */
export interface InsulationRow {
  /** The row holds below this voltage, and at it too where `including` says so. */
  readonly upTo: number;
  readonly including: boolean;
  readonly testVoltage: Given;
  readonly leastResistance: Given;
}

/**
 * Everything that differs from one body of rules to another, as a value. A rule reads figures from it and never asks
 * which one it is.
 */
export interface RuleSet {
  /** The word of `site { rules: … }`. */
  readonly id: string;
  readonly title: string;
  readonly editions: readonly Edition[];
  readonly limits: Readonly<Record<LimitKey, Limit>>;
  readonly settings: Readonly<Record<SettingKey, Setting>>;
  readonly coldFactors: ColdFactors;
  readonly stringFuse: StringFuseRule;
  /** Constant of the critical length by the word of `site { building: … }`. */
  readonly criticalLengthConstants: ReadonlyMap<string, Given>;
  readonly impulseWithstand: WithstandTable;
  /** How much hotter than the air the cells get in full sun, by the word of `mounting`. */
  readonly cellRise: ReadonlyMap<string, Given>;
  readonly ampacity: readonly AmpacityColumn[];
  /** Factors for circuits that run together, by the word of `method`. */
  readonly grouping: ReadonlyMap<string, FactorTable>;
  readonly insulationTest: readonly InsulationRow[];
  /** Factor from Uoc at standard test conditions to the system voltage of the insulation test. */
  readonly insulationVoltageFactor: Given;
  readonly ac: AcRules;
  readonly labels: LabelTexts;
  /** A limit by its property name. Throws RangeError for a name that is not in `limitRows`. */
  limit(name: string): Limit;
  /** A choice by its property name. Throws RangeError for a name that is not in `settingRows`. */
  setting(name: string): Setting;
}

/** A limit from its row: `value` in the row's own unit. */
export function limit(key: LimitKey, value: number, source: Source, reason?: string): Limit {
  const { symbol, dimension, unit, help } = limitRows[key];
  const text = reason === undefined ? help : `${help} ${reason}`;
  return {
    kind: "given",
    symbol,
    value: toSi(value, unit),
    dimension,
    unit,
    origin: { kind: "rule-set", text, source },
    source,
    reason,
  };
}

/** A figure of a rule set that a site cannot change. SI value. */
export function ruleFigure(
  symbol: string,
  value: number,
  dimension: Given["dimension"],
  unit: string,
  text: string,
  source: Source,
): Given {
  return { kind: "given", symbol, value, dimension, unit, origin: { kind: "rule-set", text, source } };
}

/** Completes a rule set with its look-up by property name. */
export function ruleSet(definition: Omit<RuleSet, "limit" | "setting">): RuleSet {
  return {
    ...definition,
    limit(name) {
      const key = limitKey(name);
      if (!key) throw new RangeError(`"${name}" is not a limit`);
      return definition.limits[key];
    },
    setting(name) {
      const key = settingKey(name);
      if (!key) throw new RangeError(`"${name}" is not a choice`);
      return definition.settings[key];
    },
  };
}

/** The row for a system voltage in V (Uoc at standard test conditions times `insulationVoltageFactor`). */
export function insulationRow(set: RuleSet, voltage: number): InsulationRow | undefined {
  return set.insulationTest.find((row) => voltage < row.upTo || (row.including && voltage === row.upTo));
}
