import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** Currents of the a.c. side, per line conductor, and the direction that decides. */

/** Line conductors of a device or supply. */
export type LineCount = 1 | 3;

/** A number of phases as figures give it; undefined for anything but one and three. */
export function lineCount(phases: Figure): LineCount | undefined {
  return phases.value === 1 || phases.value === 3 ? phases.value : undefined;
}

/** Voltage between lines (V) of a three-phase supply, from its voltage to earth (V). */
export function lineVoltage(voltage: Figure): Derived {
  return derive("U", Math.sqrt(3) * voltage.value, "voltage", "V", "√3 · U0", [as("U0", voltage)], arithmetic);
}

/** Current per line conductor (A) of a power (W) at unity power factor; the voltage (V) is that to neutral. */
export function acCurrent(power: Figure, voltage: Figure, lines: LineCount): Derived {
  const terms = [as("P", power), as("U0", voltage)];
  const formula = lines === 1 ? "P / U0" : "P / (3 · U0)";
  return derive("I", power.value / (lines * voltage.value), "current", "A", formula, terms, arithmetic);
}

/** Power (W) of a current per line conductor (A) at unity power factor; the voltage (V) is that to neutral. */
export function acPower(current: Figure, voltage: Figure, lines: LineCount): Derived {
  const terms = [as("I", current), as("U0", voltage)];
  const formula = lines === 1 ? "U0 · I" : "3 · U0 · I";
  return derive("P", lines * voltage.value * current.value, "power", "kW", formula, terms, arithmetic);
}

/** Which way energy goes through a conductor, and why. */
export type Direction = "export" | "import" | "backup" | "pass-through";

export interface DirectedCurrent {
  readonly direction: Direction;
  /** A per line conductor. */
  readonly current: Figure;
}

const symbols: Readonly<Record<Direction, string>> = {
  export: "Iexp",
  import: "Iimp",
  backup: "Ibu",
  "pass-through": "Ipass",
};

export interface DesignCurrent {
  readonly current: Derived;
  /** The direction whose current it is. */
  readonly direction: Direction;
}

/**
 * Design current Ib (A) of a conductor that carries energy one way at a time: the largest of the currents, each
 * direction given at most once. Undefined for none.
 */
export function designCurrent(currents: readonly DirectedCurrent[]): DesignCurrent | undefined {
  let largest: DirectedCurrent | undefined;
  for (const each of currents) if (!largest || each.current.value > largest.current.value) largest = each;
  if (!largest) return undefined;
  const terms = currents.map(({ direction, current }) => as(symbols[direction], current));
  const formula = terms.length === 1 ? terms[0]!.symbol : `max(${terms.map(({ symbol }) => symbol).join("; ")})`;
  const current = derive("Ib", largest.current.value, "current", "A", formula, terms, arithmetic);
  return { current, direction: largest.direction };
}
