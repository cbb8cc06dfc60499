import type { Dimension } from "@sunwright/grammar";
import type { Quantity } from "./model.js";
import type { PropertyRow } from "./schema/index.js";

/** Dimensions of which nothing has less than none; for temperatures that is absolute zero. */
const magnitudes: ReadonlySet<Dimension> = new Set<Dimension>([
  "ratio",
  "length",
  "area",
  "voltage",
  "current",
  "power",
  "energy",
  "charge",
  "resistance",
  "resistance-per-length",
  "temperature",
  "time",
  "frequency",
  "irradiance",
  "flash-density",
  "let-through",
]);

/**
 * Whether a thing can have this value at all. A coefficient whose minus sign was forgotten would make a string look
 * lower in the cold than it is: nothing may be computed with it.
 */
export function isPossible(row: PropertyRow, quantity: Quantity): boolean {
  const { si, dimension } = quantity;
  if (!Number.isFinite(si)) return false;
  if (row.sign === "negative") return si < 0;
  return si >= 0 || row.sign === "either" || !magnitudes.has(dimension);
}
