import type { SizeTable } from "../../physics/ampacity.js";

/** Nominal sizes of the tables' rows, mm². */
export const from1 = [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35] as const;
export const from1p5 = [1.5, 2.5, 4, 6, 10, 16, 25, 35] as const;
export const to16 = [1, 1.5, 2.5, 4, 6, 10, 16] as const;

/** A column of figures beside its sizes. Throws RangeError when one is missing, so that no figure slips a row. */
export function sized(sizes: readonly number[], figures: readonly number[]): SizeTable {
  if (sizes.length !== figures.length) throw new RangeError(`${figures.length} figures for ${sizes.length} sizes`);
  return sizes.map((size, index) => [size, figures[index]!] as const);
}

/** Half of every figure: what is left of method C in thermal insulation that surrounds a cable for 0.5 m and more. */
export function halved(table: SizeTable): SizeTable {
  return table.map(([size, figure]) => [size, figure / 2] as const);
}
