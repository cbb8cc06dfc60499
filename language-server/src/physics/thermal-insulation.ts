import { type FactorTable, lookUpFactor } from "./ampacity.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/**
 * Factor Ci, a ratio, for a cable that thermal insulation of the building surrounds over a length in m. A length between
 * two rows of the table takes the longer one's factor. Undefined beyond the table's end.
 */
export function insulationFactor(table: FactorTable, length: Figure): Derived | undefined {
  const factor = lookUpFactor(table, length.value);
  return factor && derive("Ci", factor.value, "ratio", "", "Ci(Lins)", [as("Lins", length)], table.source);
}
