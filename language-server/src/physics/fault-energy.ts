import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** What a fault heats: the current of an earth fault, its energy, and the conductor that stands it. */

const adiabatic: Source = {
  title: "BS 7671:2018 and IEC 60364-5-54",
  clause: "section 543.1, S = √(I² · t) / k",
  basis: "read",
};

/** Current of a fault to earth (A) through a loop impedance (Ω), by the voltage to earth (V). */
export function earthFaultCurrent(voltage: Figure, loop: Figure): Derived {
  const terms = [as("U0", voltage), as("Zs", loop)];
  return derive("If", voltage.value / loop.value, "current", "A", "U0 / Zs", terms, adiabatic);
}

/** Energy let through (A²s) by a current (A) that flows for a time (s). */
export function letThrough(current: Figure, time: Figure): Derived {
  const terms = [as("If", current), as("t", time)];
  return derive("I²t", current.value ** 2 * time.value, "let-through", "A2s", "If² · t", terms, adiabatic);
}

/** The smaller of two let-through energies, A²s: of the fault as computed, and what the device's class limits. */
export function limitedLetThrough(fault: Figure, limit: Figure): Derived {
  const terms = [as("E", fault), as("Elim", limit)];
  return derive("I²t", Math.min(fault.value, limit.value), "let-through", "A2s", "min(E; Elim)", terms, adiabatic);
}

/** Smallest cross-section (m²) that stands a let-through energy (A²s); k in A·√s/mm². Holds for faults up to 5 s. */
export function adiabaticSize(energy: Figure, k: Figure): Derived {
  const value = (Math.sqrt(energy.value) / k.value) * 1e-6;
  return derive("S", value, "area", "mm2", "√(I²t) / k", [as("I²t", energy), as("k", k)], adiabatic);
}

/** Which conductor heats: a core of the cable or one bunched with cables, one laid apart, the armour, a live core. */
export type ConductorPlace = "core" | "separate" | "armour" | "live";

/** k by place and insulation, as `core/thermoplastic-70`. */
export type AdiabaticFactors = ReadonlyMap<string, Given>;

/** k in A·√s/mm²; undefined for an insulation without a figure. */
export function adiabaticFactor(
  factors: AdiabaticFactors,
  place: ConductorPlace,
  insulation: string,
): Given | undefined {
  return factors.get(`${place}/${insulation}`);
}

/** Largest energy (A²s) that circuit-breakers of an energy limiting class let through. */
export interface EnergyLimit {
  readonly curve: string;
  /** Rated breaking capacity, A: the fault level that the limit holds up to. */
  readonly breakingCapacity: number;
  /** Rated currents up to this one, A. */
  readonly upTo: number;
  readonly energy: Given;
}

/**
 * The limit of a circuit-breaker by its curve, breaking capacity (A), rating (A) and the fault current (A) where it
 * stands; without that current, at its full breaking capacity. Undefined outside the table, whose rows are in order of
 * breaking capacity. A device that breaks 6 kA lets less through where 1 kA can flow: it is read at the next fault level
 * of the table, as the tables of least protective conductors of the trade are.
 */
export function energyLimit(
  limits: readonly EnergyLimit[],
  breaker: { readonly curve: string; readonly breakingCapacity: number; readonly rating: number },
  fault = breaker.breakingCapacity,
): Given | undefined {
  return limits.find(
    ({ curve, breakingCapacity, upTo }) =>
      curve === breaker.curve &&
      breakingCapacity < breaker.breakingCapacity + 1 &&
      fault < breakingCapacity + 1 &&
      breaker.rating <= upTo,
  )?.energy;
}
