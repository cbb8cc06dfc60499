import type { LineCount } from "./ac-current.js";
import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, assumed, derive } from "./make.js";

/** What feeding into the supply does to its voltage: at the supply terminals, and at the inverter. */

export interface SupplyFacts {
  /** Measured or declared loop impedance of line and neutral, Ω. */
  readonly lineNeutral?: Figure;
  /** The word of the supply's `earthing`. */
  readonly earthing?: string;
  /** Ze, Ω. */
  readonly external?: Figure;
  /** Voltage to earth, V. */
  readonly voltage?: Figure;
  /** Prospective fault current at the origin, A. */
  readonly prospective?: Figure;
}

/**
 * Loop impedance of line and neutral of the supply (Ω), over which the voltage rises. As measured; else Ze of a TN-C-S
 * supply, an assumption with its reason; else from the prospective fault current. Undefined where none of them is known.
 */
export function supplyLoop(supply: SupplyFacts): Figure | undefined {
  const { lineNeutral, earthing, external, voltage, prospective } = supply;
  if (lineNeutral) return as("ZL-N", lineNeutral);
  if (earthing === "TN-C-S" && external) {
    const reason =
      "loop impedance of line and neutral not stated: Ze, because neutral and earth of a TN-C-S supply are one conductor";
    return assumed("ZL-N", external.value, "resistance", external.unit ?? "ohm", reason);
  }
  if (!voltage || !prospective) return undefined;
  const terms = [as("U0", voltage), as("Ipf", prospective)];
  const note = "the prospective fault current is the largest of all kinds of fault; this loop may be longer";
  return derive("ZL-N", voltage.value / prospective.value, "resistance", "ohm", "U0 / Ipf", terms, arithmetic, note);
}

/**
 * Rise (V to neutral) that a current per line conductor (A) makes over the supply's loop. Three equal line currents
 * leave the neutral idle, so that only the line's half of the loop counts.
 */
export function supplyRise(current: Figure, loop: Figure, lines: LineCount): Derived {
  const terms = [as("I", current), as("ZL-N", loop)];
  const value = (current.value * loop.value) / (lines === 1 ? 1 : 2);
  if (lines === 1) return derive("ΔUs", value, "voltage", "V", "I · ZL-N", terms, arithmetic);
  const note = "equal currents in three lines: the neutral carries nothing, and line and neutral are taken as alike";
  return derive("ΔUs", value, "voltage", "V", "I · ZL-N / 2", terms, arithmetic, note);
}

/** Voltage at the supply terminals (V) while feeding in: as measured without generation, plus the rise. */
export function terminalVoltage(measured: Figure, rise: Figure): Derived {
  const terms = [as("U", measured), as("ΔUs", rise)];
  return derive("Ut", measured.value + rise.value, "voltage", "V", "U + ΔUs", terms, arithmetic);
}

/** Voltage to neutral at the inverter's terminals (V): that of the supply terminals and the rise along the runs. */
export function inverterVoltage(terminal: Figure, cableRise: Figure): Derived {
  const terms = [as("Ut", terminal), as("ΔU", cableRise)];
  return derive("Uinv", terminal.value + cableRise.value, "voltage", "V", "Ut + ΔU", terms, arithmetic);
}

/** Voltage of the idle supply (V) from which on the inverter disconnects: its trip less both rises. */
export function supplyVoltageAtTrip(trip: Figure, supply: Figure, cable: Figure): Derived {
  const value = trip.value - supply.value - cable.value;
  const terms = [as("U>", trip), as("ΔUs", supply), as("ΔU", cable)];
  return derive("Utrip", value, "voltage", "V", "U> − ΔUs − ΔU", terms, arithmetic);
}
