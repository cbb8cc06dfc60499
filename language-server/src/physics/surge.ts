import { fromSi } from "@sunwright/grammar";
import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Surge protection on the DC side: where it is needed, and what it must withstand and let through. */

const critical: Source = {
  title: "IEC 60364-7-712",
  clause: "critical length of the DC route by ground flash density",
  basis: "read",
};

/**
 * Critical length, m: DC routes from here on need a surge protective device. `constant` is the rule set's number for
 * the kind of site, for a flash density in flashes per km² and year; `flashDensity` is an SI figure.
 */
export function criticalLength(constant: Figure, flashDensity: Figure): Derived {
  const value = constant.value / fromSi(flashDensity.value, "/km2/yr");
  const terms = [as("kL", constant), as("Ng", flashDensity)];
  return derive("Lcrit", value, "length", "m", "kL / Ng", terms, critical);
}

const margin: Source = {
  title: "IEC 61643-12",
  clause: "protection level at most 80 % of the impulse withstand voltage",
  basis: "read",
};

/** Highest protection level Up (V) that protects equipment of an impulse withstand voltage Uw (V). */
export function highestProtectionLevel(withstand: Figure, factor: Figure): Derived {
  const terms = [as("f", factor), as("Uw", withstand)];
  return derive("Up,max", factor.value * withstand.value, "voltage", "kV", "f · Uw", terms, margin);
}

/** Impulse withstand voltages by the highest open-circuit voltage of the array. All in V. */
export interface WithstandTable {
  readonly rows: readonly {
    readonly upTo: number;
    readonly inverter: Given;
    readonly moduleBasic: Given;
    readonly moduleReinforced: Given;
  }[];
}
export type Protected = "inverter" | "moduleBasic" | "moduleReinforced";

/** Uw of what is protected, for an array's highest voltage in V; undefined beyond the table. */
export function impulseWithstand(table: WithstandTable, voltage: number, what: Protected): Given | undefined {
  return table.rows.find((row) => voltage <= row.upTo)?.[what];
}
