import { zeroCelsius } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Resistance of copper conductors. */

const copper: Source = {
  title: "IEC 60228:2004",
  clause: "temperature correction of copper resistance, constant 234.5",
  basis: "memory",
};

/** Below 0 °C by so many kelvin the resistance of copper would vanish, if it kept falling in a straight line. */
const copperConstant = 234.5;

/** Factor from the resistance at 20 °C to that at a temperature in K, for copper. */
export function copperFactor(temperature: number): number {
  return (copperConstant + temperature - zeroCelsius) / (copperConstant + 20);
}

/** Resistance per metre of one conductor (Ω/m) at a conductor temperature (K), from that at 20 °C. */
export function resistanceAtTemperature(at20: Figure, temperature: Figure): Derived {
  const value = at20.value * copperFactor(temperature.value);
  const terms = [as("r20", at20), as("Tc", temperature)];
  return derive(
    "r",
    value,
    "resistance-per-length",
    "ohm/km",
    "r20 · (234.5 °C + Tc) / (234.5 °C + 20 °C)",
    terms,
    copper,
  );
}

const loop: Source = { title: "both conductors of a two-wire run in series", basis: "arithmetic" };

/** Resistance there and back (Ω) of a run: one-way length (m), resistance per metre of one conductor (Ω/m). */
export function loopResistance(length: Figure, perMetre: Figure): Derived {
  const value = 2 * length.value * perMetre.value;
  return derive("R", value, "resistance", undefined, "2 · L · r", [as("L", length), as("r", perMetre)], loop);
}
