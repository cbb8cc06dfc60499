import { type FactorTable, lookUpFactor } from "./ampacity.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/**
 * Factor for circuits that run together and warm each other, a ratio. `circuits` counts them all, the one in question
 * included. Undefined beyond the table's end: then the check cannot be made.
 */
export function groupingFactor(table: FactorTable, circuits: Figure): Derived | undefined {
  const factor = lookUpFactor(table, circuits.value);
  return factor && derive("Cg", factor.value, "ratio", "", "Cg(Ng)", [as("Ng", circuits)], table.source);
}
