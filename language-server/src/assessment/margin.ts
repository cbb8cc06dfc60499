import type { Figure } from "../physics/figure.js";

/**
 * Whether a figure that holds has a margin to speak of: something that happens, against what something stands. Whoever
 * takes a size of a series that just reaches what is asked for (a conductor of 6 mm² against 6 mm², two poles, a fuse
 * of the rating that the module's sheet names) chose well, and has cut nothing fine.
 */
export function hasMargin(value: Figure, limit: Figure): boolean {
  if (value.dimension === "area" || value.dimension === "number") return false;
  return value.kind === "derived" || value.value !== limit.value;
}
