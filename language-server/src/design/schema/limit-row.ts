import type { Dimension } from "@sunwright/grammar";

/** One limit that a site may set for itself; every rule set gives each a figure with its source. */
export interface LimitRow {
  /** Name of the property in the text. */
  readonly name: string;
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Unit that the figure is printed in. */
  readonly unit: string;
  readonly help: string;
}

export function limitRow(name: string, symbol: string, dimension: Dimension, unit: string, help: string): LimitRow {
  return { name, symbol, dimension, unit, help };
}
