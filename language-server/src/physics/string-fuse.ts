import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive } from "./make.js";
import { reverseCurrent } from "./short-circuit.js";

/** When parallel strings need fuses, and which ratings fit. A rule set supplies the figures; both published forms fit. */
export interface StringFuseRule {
  readonly source: Source;
  readonly reason?: string;
  /** The current that the factors multiply: a string's Isc, or its Isc,max with K_I already in it. */
  readonly basis: "isc" | "isc-max";
  /** Fuses are needed where the reverse current exceeds this factor times the module's series-fuse rating. */
  readonly neededAbove: Given;
  /** Lowest rating as a factor on the current; `above` leaves the bound itself out. */
  readonly lowest: Given;
  readonly lowestIsExcluded: boolean;
  /** Highest rating as a factor on the current; the module's series-fuse rating is a ceiling always. */
  readonly highest?: Given;
}

export interface StringFuseInputs {
  readonly stringsInParallel: Figure;
  /** Isc of one string at standard test conditions, A. */
  readonly shortCircuitCurrent: Figure;
  /** The same with the rule set's K_I, A. */
  readonly maximumShortCircuitCurrent: Figure;
  /** The module's maximum series-fuse rating, A. */
  readonly moduleFuseRating: Figure;
}

export interface StringFuseNeed {
  readonly needed: boolean;
  readonly reverse: Derived;
  /** What the reverse current is held against, A. */
  readonly bound: Derived;
}

/** Whether the strings of one parallel group need fuses of their own. */
export function stringFuseNeed(inputs: StringFuseInputs, rule: StringFuseRule): StringFuseNeed {
  const reverse = reverseCurrent(inputs.stringsInParallel, basisCurrent(inputs, rule));
  const { moduleFuseRating } = inputs;
  const terms = [as("f", rule.neededAbove), as("Imod", moduleFuseRating)];
  const value = rule.neededAbove.value * moduleFuseRating.value;
  const bound = derive("Irev,limit", value, "current", "A", "f · Imod", terms, rule.source);
  return { needed: reverse.value > bound.value, reverse, bound };
}

export interface StringFuseWindow {
  readonly lowest: Derived;
  readonly lowestIsExcluded: boolean;
  /** The smaller of the rule's upper bound and the module's rating. */
  readonly highest: Derived;
}

/** The ratings that a string fuse may have, A. */
export function stringFuseWindow(inputs: StringFuseInputs, rule: StringFuseRule): StringFuseWindow {
  const current = basisCurrent(inputs, rule);
  const { moduleFuseRating } = inputs;
  const low = [as("fmin", rule.lowest), as("I", current)];
  const lowest = derive("In,min", rule.lowest.value * current.value, "current", "A", "fmin · I", low, rule.source);
  const rating = as("Imod", moduleFuseRating);
  const highest = rule.highest
    ? derive(
        "In,max",
        Math.min(rule.highest.value * current.value, moduleFuseRating.value),
        "current",
        "A",
        "min(fmax · I; Imod)",
        [as("fmax", rule.highest), as("I", current), rating],
        rule.source,
      )
    : derive("In,max", moduleFuseRating.value, "current", "A", "Imod", [rating], rule.source);
  return { lowest, lowestIsExcluded: rule.lowestIsExcluded, highest };
}

/** Whether a rating (A) lies in a window. */
export function fuseFits(rating: number, window: StringFuseWindow): boolean {
  const { lowest, lowestIsExcluded, highest } = window;
  const isAboveLowest = lowestIsExcluded ? rating > lowest.value : rating >= lowest.value;
  return isAboveLowest && rating <= highest.value;
}

function basisCurrent(inputs: StringFuseInputs, rule: StringFuseRule): Figure {
  return rule.basis === "isc" ? inputs.shortCircuitCurrent : inputs.maximumShortCircuitCurrent;
}
