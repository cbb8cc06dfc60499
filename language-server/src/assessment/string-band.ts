import type { PvArray } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import type { Derived, Given } from "../physics/figure.js";
import { moduleOf } from "../rules/array-figures.js";
import { NotKnown } from "../rules/judge.js";
import { coldOperatingVoltage, hotOperatingVoltage } from "../rules/operating-voltage.js";
import type { Assessment } from "./assessment.js";

/** Between which voltages a string works, and between which its tracker does. V. */
export interface StringBand {
  readonly hot: Derived;
  readonly cold: Derived;
  readonly tracker: Item;
  readonly low: Given;
  readonly high: Given;
}

const strings = new WeakMap<Assessment, Map<string, readonly [PvArray, Item]>>();

/** Worked out when somebody asks; undefined for a string on no tracker, and where something it needs is not stated. */
export function stringBand(assessment: Assessment, id: string): StringBand | undefined {
  const found = stringsOf(assessment).get(id);
  const tracker = found?.[0].tracker;
  if (!found || !tracker) return undefined;
  const { judge } = assessment;
  const window = judge.range(tracker, "voltage-range");
  if (!window) return undefined;
  try {
    const string = found[1];
    const module = moduleOf(string);
    const hot = hotOperatingVoltage(string, module, judge);
    return { hot, cold: coldOperatingVoltage(string, module, judge), tracker, ...window };
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

function stringsOf(assessment: Assessment): ReadonlyMap<string, readonly [PvArray, Item]> {
  let known = strings.get(assessment);
  if (!known) {
    known = new Map();
    for (const { arrays } of assessment.zones)
      for (const array of arrays) for (const { string } of array.strings) known.set(string.id, [array, string]);
    strings.set(assessment, known);
  }
  return known;
}
