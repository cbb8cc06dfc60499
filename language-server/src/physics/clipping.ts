import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

const rear: Source = { title: "rear-side gain as declared for the place", basis: "arithmetic" };

/** Current at maximum power with the declared rear-side gain of a bifacial module (a ratio), A. */
export function workingCurrentWithGain(current: Figure, gain?: Figure): Figure {
  if (!gain) return current;
  const terms = [as("Imp", current), as("b", gain)];
  return derive("I", current.value * (1 + gain.value), "current", "A", "Imp · (1 + b)", terms, rear);
}

const clipped: Source = {
  title: "an input that holds its current to its limit, voltage taken as unchanged",
  basis: "arithmetic",
};

/**
 * Share of the power that an input cannot take in full sun, a ratio. `working` is the current at maximum power, `limit`
 * what the input operates at (A). An upper bound: at less current an array works at a slightly higher voltage.
 */
export function clippedShare(working: Figure, limit: Figure): Derived {
  const value = Math.max(1 - limit.value / working.value, 0);
  const terms = [as("Imax", limit), as("I", working)];
  return derive("δ", value, "ratio", "%", "1 − Imax / I", terms, clipped);
}
