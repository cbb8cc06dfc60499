import { arithmetic } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Without the grid: what an inverter feeds into a fault, and what an electrode may have. */

const source: Source = {
  title: "an inverter limits its own current; the loop limits it further where it is longer",
  basis: "arithmetic",
};

/**
 * Current (A) of an earth fault in an island: what the inverter can feed (A), and no more than its voltage (V) drives
 * through the loop inside the installation (Ω), where that is known.
 */
export function islandFaultCurrent(inverter: Figure, voltage: Figure, loop?: Figure): Derived {
  const own = as("If,inv", inverter);
  if (!loop) return derive("If", inverter.value, "current", "A", "If,inv", [own], source);
  const value = Math.min(inverter.value, voltage.value / loop.value);
  return derive("If", value, "current", "A", "min(If,inv; U0 / Zs)", [own, as("U0", voltage), as("Zs", loop)], source);
}

const electrode: Source = {
  title: "BS 7671:2018 and IEC 60364-4-41",
  clause: "411.5.3 and Table 41.5, with its note on resistances that may not be stable",
  basis: "memory",
};

/** Largest resistance (Ω) of an electrode: by touch voltage (V) and IΔn (A), and no more than what is stable (Ω). */
export function largestElectrodeResistance(touchVoltage: Figure, residualCurrent: Figure, stable: Figure): Derived {
  const terms = [as("UL", touchVoltage), as("IΔn", residualCurrent), as("Rstable", stable)];
  const value = Math.min(touchVoltage.value / residualCurrent.value, stable.value);
  return derive("RA,max", value, "resistance", "ohm", "min(UL / IΔn; Rstable)", terms, electrode);
}

/** Voltage (V) that an earth fault current of IΔn (A) puts on what is earthed through a resistance (Ω). */
export function touchVoltage(resistance: Figure, residualCurrent: Figure): Derived {
  const terms = [as("RA", resistance), as("IΔn", residualCurrent)];
  return derive("Ut", resistance.value * residualCurrent.value, "voltage", "V", "RA · IΔn", terms, arithmetic);
}
