import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** What runs at once on a backup port. */

/** Power (W) of a load that is expected at the same time as the others: its rating and its share of it (a ratio). */
export function expectedDemand(power: Figure, share?: Figure): Derived {
  if (!share) return derive("Pd", power.value, "power", "kW", "P", [as("P", power)], arithmetic);
  const terms = [as("P", power), as("kd", share)];
  return derive("Pd", power.value * share.value, "power", "kW", "P · kd", terms, arithmetic);
}

/** Demand of several loads together, W. */
export function totalDemand(demands: readonly Figure[]): Derived {
  let value = 0;
  for (const each of demands) value += each.value;
  const terms = demands.map((each) => as("Pd", each));
  return derive("Pd,sum", value, "power", "kW", terms.length === 0 ? "0" : "Σ Pd", terms, arithmetic);
}
