import { arithmetic, standardCellTemperature } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";
import type { SeriesString } from "./string-voltage.js";

/** The inverse questions: at which temperature a limit is reached, and how many modules hold. */

/** Slack of a whole number of modules against rounding: 600 V / 50 V is twelve modules, not eleven. */
const slack = 1e-9;

const relative = "25 °C + (Ulimit / (n · U) − 1) / β";
const absolute = "25 °C + (Ulimit / n − U) / β";

/**
 * Cell temperature (K) at which a string's voltage equals a limit. `voltage` and `coefficient` belong together: Uoc
 * with its coefficient, or Ump with its own. Undefined for a coefficient of zero.
 */
export function temperatureAtLimit(string: SeriesString, coefficient: Figure, limit: Figure): Derived | undefined {
  const { modules, voltage } = string;
  if (coefficient.value === 0) return undefined;
  const isAbsolute = coefficient.dimension === "voltage-per-kelvin";
  const away = isAbsolute
    ? (limit.value / modules.value - voltage.value) / coefficient.value
    : (limit.value / (modules.value * voltage.value) - 1) / coefficient.value;
  const terms = [as("Ulimit", limit), as("n", modules), as("U", voltage), as("β", coefficient)];
  const formula = isAbsolute ? absolute : relative;
  return derive("Tlimit", standardCellTemperature + away, "temperature", "degC", formula, terms, arithmetic);
}

/** Most modules in series whose voltage stays at or under a limit. `perModule` is one module's voltage (n = 1), V. */
export function largestCount(limit: Figure, perModule: Figure): Derived {
  const value = Math.floor(limit.value / perModule.value + slack);
  const terms = [as("Ulimit", limit), as("U", perModule)];
  return derive("nmax", Math.max(value, 0), "number", "", "⌊Ulimit / U⌋", terms, arithmetic);
}

/** Fewest modules in series whose voltage reaches a lower bound. `perModule` is one module's voltage (n = 1), V. */
export function smallestCount(bound: Figure, perModule: Figure): Derived {
  const value = Math.ceil(bound.value / perModule.value - slack);
  const terms = [as("Ulimit", bound), as("U", perModule)];
  return derive("nmin", Math.max(value, 0), "number", "", "⌈Ulimit / U⌉", terms, arithmetic);
}
