import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** Batteries in parallel at one port: what they give together, and what the others feed into one of them. */

/** Current (A) of batteries in parallel: what they deliver, or take, together. */
export function batteriesTogether(currents: readonly Figure[]): Derived {
  return derive("Isum", sum(currents), "current", "A", "Σ Ibank", named(currents), arithmetic);
}

/**
 * Largest fault current (A) that a protective device in the lead of one battery may have to break: its own battery's
 * into a fault beyond it, or that of all the others into a fault before it.
 */
export function faultCurrentOfLead(own: Figure, others: readonly Figure[]): Derived {
  const unit = own.value >= 1000 ? "kA" : "A";
  if (others.length === 0) return derive("Ik", own.value, "current", unit, "Iown", [as("Iown", own)], arithmetic);
  const back = sum(others);
  const terms = [as("Iown", own), ...named(others)];
  return derive("Ik", Math.max(own.value, back), "current", unit, "max(Iown; Σ Ibank)", terms, arithmetic);
}

function sum(currents: readonly Figure[]): number {
  let total = 0;
  for (const { value } of currents) total += value;
  return total;
}

function named(currents: readonly Figure[]): Figure[] {
  return currents.map((current) => as("Ibank", current));
}
