import { fact } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { cellByNominalTemperature, hottestCellByMounting } from "../physics/cell-temperature.js";
import { standardIrradiance } from "../physics/constants.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { as, assumed } from "../physics/make.js";
import { maxPowerCoefficient } from "../physics/max-power-coefficient.js";
import { coldMaxPowerVoltage, hotMaxPowerVoltage } from "../physics/string-voltage.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Missing } from "./rule.js";

/** Voltages at maximum power in cold and heat, from what the module's sheet and the site say. */

const fullSun = assumed("G", standardIrradiance, "irradiance", "W/m2", "cells are hottest in full sun");

/**
 * Temperature of the hottest cells of a string, K: hottest air and the rise that its mounting causes; for modules with
 * air all round, as in the test of the nominal temperature, the rise that their sheet gives.
 */
export function hottestCell(string: Item, judge: Judge): Derived {
  const air = judge.needSite("highest-temperature");
  const mounting = judge.needWord(string, "mounting");
  const nominal = mounting === "ground" && judge.quantity(moduleOf(string), "nominal-operating-cell-temperature");
  if (nominal) return as("Tmax", cellByNominalTemperature(air, fullSun, nominal));
  const rise = judge.ruleSet.cellRise.get(mounting);
  if (!rise) throw new NotKnown([], `the rule set knows no cell temperature for mounting ${mounting}`);
  return hottestCellByMounting(air, withReason(rise, string));
}

/** Where the mounting itself was assumed, the figure that follows from it says so. */
function withReason(rise: Given, string: Item): Given {
  const origin = fact(string, "mounting")?.origin;
  if (origin?.kind !== "assumed") return rise;
  return { ...rise, origin: { ...rise.origin, text: `${rise.origin.text}; ${origin.text}` } };
}

/** Ump of a module at standard test conditions (V) with its coefficient. */
export interface OperatingModule {
  readonly voltage: Figure;
  readonly coefficient: Figure;
}

const memory = new WeakMap<Judge, Map<Part, OperatingModule>>();

/** Read once an assessment for each module. Throws NotKnown naming what is missing. */
export function operatingModule(module: Part, judge: Judge): OperatingModule {
  let known = memory.get(judge);
  if (!known) {
    known = new Map();
    memory.set(judge, known);
  }
  let found = known.get(module);
  if (!found) {
    const [voltage] = judge.need([module, "voltage-at-max-power"]);
    found = { voltage, coefficient: coefficientOf(module, judge) };
    known.set(module, found);
  }
  return found;
}

/** The sheet's own coefficient of Ump, else power less current coefficient. */
function coefficientOf(module: Part, judge: Judge): Figure {
  const power = judge.quantity(module, "power-coefficient");
  const shortCircuitCurrent = judge.quantity(module, "short-circuit-current-coefficient");
  const maxPowerVoltage = judge.quantity(module, "voltage-at-max-power-coefficient");
  const current = judge.quantity(module, "short-circuit-current");
  const coefficient = maxPowerCoefficient({ maxPowerVoltage, power, shortCircuitCurrent }, current);
  if (coefficient) return coefficient;
  const missing: Missing[] = [];
  if (!power) missing.push({ thing: module, property: "power-coefficient" });
  if (!shortCircuitCurrent) missing.push({ thing: module, property: "short-circuit-current-coefficient" });
  else if (!current) missing.push({ thing: module, property: "short-circuit-current" });
  throw new NotKnown(missing);
}

/** Ump of so many modules with the hottest cells of a string's mounting, V. */
export function hotOperatingVoltage(string: Item, module: Part, judge: Judge, count = string.count): Derived {
  const { voltage, coefficient } = operatingModule(module, judge);
  return hotMaxPowerVoltage(
    { modules: modulesInSeries(string, count), voltage },
    coefficient,
    hottestCell(string, judge),
  );
}

/** Ump of so many modules at the site's lowest temperature, V. */
export function coldOperatingVoltage(string: Item, module: Part, judge: Judge, count = string.count): Derived {
  const { voltage, coefficient } = operatingModule(module, judge);
  const lowest = judge.needSite("lowest-temperature");
  return coldMaxPowerVoltage({ modules: modulesInSeries(string, count), voltage }, coefficient, lowest);
}
