import type { PvArray } from "../circuit/array.js";
import { given, statedOrigin, wordOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import type { Derived, Given } from "../physics/figure.js";
import { maximumShortCircuitCurrent, parallelCurrent } from "../physics/short-circuit.js";
import { coldOpenCircuitVoltage } from "../physics/string-voltage.js";
import { type Judge, NotKnown } from "./judge.js";

/** Figures of strings and arrays that many rules ask for; each is worked out once an assessment. */

/** The module that a string is made of. Throws NotKnown where the string names none that exists. */
export function moduleOf(string: Item): Part {
  if (!string.part) throw new NotKnown([], "no module is named for the string");
  return string.part;
}

/** n, modules in series. Throws NotKnown for a count that no string can have. */
export function modulesInSeries(string: Item, count = string.count): Given {
  if (!Number.isInteger(count) || count < 1)
    throw new NotKnown([], "the number of modules is no whole number from 1 up");
  const { place, whatIf } = string.declaration.count ?? {};
  return {
    kind: "given",
    symbol: "n",
    value: count,
    dimension: "number",
    unit: "",
    origin: statedOrigin("modules in series", place, count === string.count ? whatIf : undefined),
  };
}

/** Uoc,max of so many modules of a part in series at the site's lowest temperature, V. */
export function coldVoltage(modules: Given, module: Part, judge: Judge): Derived {
  const [voltage] = judge.need([module, "open-circuit-voltage"]);
  // One that cannot be read is no reason to keep quiet: the factors that stand in for it lie on the safe side.
  const coefficient = given(module, "open-circuit-voltage-coefficient");
  let lowestTemperature = judge.siteQuantity("lowest-temperature");
  // The factors that stand in for what is not known hold for crystalline silicon only.
  if (wordOf(module, "technology") === "thin-film") {
    if (!coefficient) return judge.unknown(module, "open-circuit-voltage-coefficient");
    lowestTemperature = judge.needSite("lowest-temperature");
  }
  const inputs = { modules, voltage, coefficient, lowestTemperature };
  const cold = coldOpenCircuitVoltage(inputs, judge.ruleSet.coldFactors);
  return cold ?? judge.unknown(module, "open-circuit-voltage-coefficient");
}

/** Isc,max of a string of a part, A. */
function maximumCurrent(module: Part, judge: Judge): Derived {
  const [current] = judge.need([module, "short-circuit-current"]);
  const factor = judge.limit("short-circuit-factor");
  return maximumShortCircuitCurrent({ current, factor, bifacialGain: judge.quantity(module, "bifacial-gain") });
}

interface Known {
  readonly voltages: Map<Item, Derived>;
  readonly currents: Map<Part, Derived>;
  readonly highest: Map<PvArray, Highest>;
  readonly sums: Map<PvArray, Derived>;
}
const memory = new WeakMap<Judge, Known>();

function knownTo(judge: Judge): Known {
  let known = memory.get(judge);
  if (!known) {
    known = { voltages: new Map(), currents: new Map(), highest: new Map(), sums: new Map() };
    memory.set(judge, known);
  }
  return known;
}

/** Uoc,max of a string, V. */
export function stringColdVoltage(string: Item, judge: Judge): Derived {
  const { voltages } = knownTo(judge);
  let voltage = voltages.get(string);
  if (!voltage) {
    voltage = coldVoltage(modulesInSeries(string), moduleOf(string), judge);
    voltages.set(string, voltage);
  }
  return voltage;
}

/** Isc,max of a string, A. */
export function stringMaximumCurrent(string: Item, judge: Judge): Derived {
  const { currents } = knownTo(judge);
  const module = moduleOf(string);
  let current = currents.get(module);
  if (!current) {
    current = maximumCurrent(module, judge);
    currents.set(module, current);
  }
  return current;
}

/** The string of an array with the highest Uoc,max. */
export interface Highest {
  readonly string: Item;
  readonly voltage: Derived;
}

/** The highest voltage of an array: everything that is joined to it may see it, whichever string it sits on. */
export function highestOf(array: PvArray, judge: Judge): Highest {
  const known = knownTo(judge).highest;
  let highest = known.get(array);
  if (highest) return highest;
  for (const { string } of array.strings) {
    const voltage = stringColdVoltage(string, judge);
    if (!highest || voltage.value > highest.voltage.value) highest = { string, voltage };
  }
  if (!highest) throw new NotKnown([], "no string is wired to it");
  known.set(array, highest);
  return highest;
}

/** Isc,max of all strings of an array together, A. */
export function arrayMaximumCurrent(array: PvArray, judge: Judge): Derived {
  const { sums } = knownTo(judge);
  let sum = sums.get(array);
  if (!sum) {
    if (array.strings.length === 0) throw new NotKnown([], "no string is wired to it");
    sum = sumOfMaximumCurrents(
      array.strings.map(({ string }) => string),
      judge,
    );
    sums.set(array, sum);
  }
  return sum;
}

/** Isc,max of strings in parallel, A; of a single string its own. */
export function sumOfMaximumCurrents(strings: readonly Item[], judge: Judge): Derived {
  const [only, another] = strings;
  if (only && !another) return stringMaximumCurrent(only, judge);
  return parallelCurrent(
    strings.map((string) => stringMaximumCurrent(string, judge)),
    "Isc,max",
  );
}
