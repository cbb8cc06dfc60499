import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** Batteries of several units, and the current that their cable carries. */

export type Joined = "in-series" | "in-parallel";

/** Voltage (V) of several units, from that of one. */
export function bankVoltage(voltage: Figure, units: Figure, joined: Joined): Derived {
  if (joined === "in-parallel" || units.value === 1)
    return derive("Ubank", voltage.value, "voltage", "V", "Ubat", [as("Ubat", voltage)], arithmetic);
  const terms = [as("n", units), as("Ubat", voltage)];
  return derive("Ubank", units.value * voltage.value, "voltage", "V", "n · Ubat", terms, arithmetic);
}

/** Current (A) of several units, from that of one: what they deliver for good, or what they feed into a fault. */
export function bankCurrent(current: Figure, units: Figure, joined: Joined): Derived {
  const unit = current.value >= 1000 ? "kA" : "A";
  if (joined === "in-series" || units.value === 1)
    return derive("Ibank", current.value, "current", unit, "Ibat", [as("Ibat", current)], arithmetic);
  const terms = [as("n", units), as("Ibat", current)];
  return derive("Ibank", units.value * current.value, "current", unit, "n · Ibat", terms, arithmetic);
}

export interface BatteryLoad {
  /** Power on the a.c. side, W. */
  readonly power: Figure;
  /** Lowest voltage of the battery, V: there the current is largest. */
  readonly lowestVoltage: Figure;
  /** From the battery to the a.c. side, a ratio. */
  readonly efficiency: Figure;
}

/** Current (A) drawn from the battery at its lowest voltage. */
export function batteryCurrent(load: BatteryLoad): Derived {
  const { power, lowestVoltage, efficiency } = load;
  const value = power.value / (lowestVoltage.value * efficiency.value);
  const terms = [as("P", power), as("Umin", lowestVoltage), as("η", efficiency)];
  return derive("I", value, "current", "A", "P / (Umin · η)", terms, arithmetic);
}

/** The same, where the port holds its current below a limit of its own (A). */
export function limitedBatteryCurrent(byPower: Figure, portLimit: Figure): Derived {
  const terms = [as("I", byPower), as("Iport", portLimit)];
  return derive("Ib", Math.min(byPower.value, portLimit.value), "current", "A", "min(I; Iport)", terms, arithmetic);
}
