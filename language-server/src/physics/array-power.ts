import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** Power of an array at standard test conditions, and how it is matched to its inverter. W. */

/** Power of a string, W: `modules` is n, `power` Pmax of one module. */
export function stringPower(modules: Figure, power: Figure): Derived {
  const terms = [as("n", modules), as("Pmax", power)];
  return derive("P", modules.value * power.value, "power", "kW", "n · Pmax", terms, arithmetic);
}

/** Power of several strings, W. */
export function arrayPower(strings: readonly Figure[]): Derived {
  let value = 0;
  for (const string of strings) value += string.value;
  const terms = strings.map((string) => as("P", string));
  return derive("Pdc", value, "power", "kW", "Σ P", terms, arithmetic);
}

/** Array power over inverter power, a number. */
export function sizingRatio(array: Figure, inverter: Figure): Derived {
  const terms = [as("Pdc", array), as("Pac", inverter)];
  return derive("r", array.value / inverter.value, "number", "", "Pdc / Pac", terms, arithmetic);
}
