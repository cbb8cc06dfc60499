import type { LineCount } from "./ac-current.js";
import { loopResistance } from "./conductor.js";
import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** The largest fault current that a device may have to break. */

export interface FaultPoint {
  /** Voltage to earth, V. */
  readonly voltage: Figure;
  /** Largest prospective fault current at the origin, A; of a three-phase supply that between its lines. */
  readonly atOrigin: Figure;
  /** Runs from the origin, with one conductor at 20 °C in Ω/m: cold copper lets most current flow. */
  readonly runs: readonly { readonly length: Figure; readonly perMetre: Figure }[];
  readonly lines: LineCount;
}

/**
 * Prospective fault current behind some runs, A: never less than it can be, because the supply is taken as all reactance
 * and the runs as all resistance, which is the sum of least size.
 */
export function faultCurrentBehind(point: FaultPoint): Derived {
  const { voltage, atOrigin, runs, lines } = point;
  if (runs.length === 0) return derive("Ik", atOrigin.value, "current", "kA", "Ipf", [as("Ipf", atOrigin)], arithmetic);
  const origin = derive(
    "Z0",
    voltage.value / atOrigin.value,
    "resistance",
    undefined,
    "U0 / Ipf",
    [as("U0", voltage), as("Ipf", atOrigin)],
    arithmetic,
  );
  const resistances = runs.map(({ length, perMetre }) => conductors(length, perMetre, lines));
  let total = 0;
  for (const each of resistances) total += each.value;
  const value = voltage.value / Math.hypot(origin.value, total);
  const terms = [as("U0", voltage), origin, ...resistances];
  return derive("Ik", value, "current", "kA", "U0 / √(Z0² + (Σ R)²)", terms, arithmetic);
}

function conductors(length: Figure, perMetre: Figure, lines: LineCount): Derived {
  if (lines === 1) return loopResistance(length, perMetre);
  const terms = [as("L", length), as("r", perMetre)];
  return derive("R", length.value * perMetre.value, "resistance", undefined, "L · r", terms, arithmetic);
}

/** Fault current (A) with what generators feed into the same fault (A each). */
export function faultCurrentWithGenerators(fromSupply: Figure, generators: readonly Figure[]): Derived {
  let value = fromSupply.value;
  for (const each of generators) value += each.value;
  const terms = [as("Isup", fromSupply), ...generators.map((each) => as("Ig", each))];
  return derive("Ik", value, "current", "kA", generators.length === 0 ? "Isup" : "Isup + Σ Ig", terms, arithmetic);
}
