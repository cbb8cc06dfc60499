import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Automatic disconnection: how fast, at what current, and the loop impedance that lets it flow. */

export type EarthingSystem = "TN" | "TT";

/** The system of a supply by the word of its `earthing`; undefined for IT, which these sums do not cover. */
export function earthingSystem(earthing: string): EarthingSystem | undefined {
  if (earthing === "TT") return "TT";
  return earthing === "TN-S" || earthing === "TN-C-S" ? "TN" : undefined;
}

export interface DisconnectionRow {
  readonly system: EarthingSystem;
  readonly supply: "ac" | "dc";
  /** The row holds for voltages to earth above the one and up to the other, V. */
  readonly above: number;
  readonly upTo: number;
  readonly time: Given;
}

export interface DisconnectionTimes {
  readonly rows: readonly DisconnectionRow[];
  /** For distribution circuits, and final circuits above the ratings below. */
  readonly otherwise: Readonly<Record<EarthingSystem, Given>>;
  /** Rated current up to which the rows hold for final circuits: with socket-outlets, and with fixed equipment only. */
  readonly withSockets: Given;
  readonly fixedOnly: Given;
}

export interface CircuitFacts {
  readonly system: EarthingSystem;
  readonly supply?: "ac" | "dc";
  /** Whether it ends at current-using equipment, or feeds another board. */
  readonly use: "final" | "distribution";
  /** Whether it has no socket-outlet; unknown counts as having one, which is the stricter. */
  readonly fixedOnly?: boolean;
  /** Voltage to earth, V. */
  readonly voltage: Figure;
  /** Rated current of its protective device, A. */
  readonly rating: Figure;
}

/** Longest time until disconnection, s; undefined where the table has no row, because none is needed or it says none. */
export function disconnectionTime(times: DisconnectionTimes, circuit: CircuitFacts): Given | undefined {
  const { system, supply = "ac", use, fixedOnly, voltage, rating } = circuit;
  const bound = fixedOnly ? times.fixedOnly : times.withSockets;
  if (use === "distribution" || rating.value > bound.value) return times.otherwise[system];
  return times.rows.find(
    (row) =>
      row.system === system && row.supply === supply && voltage.value > row.above && voltage.value <= row.upTo * 1.0001,
  )?.time;
}

/** How many times its rating a circuit-breaker needs to trip within a time. */
export interface OperatingMultiple {
  readonly curve: string;
  /** The row holds for disconnection within times from this one on, s. */
  readonly from: number;
  readonly multiple: Given;
}

export interface Breaker {
  readonly curve: string;
  /** In, A. */
  readonly rating: Figure;
}

/** Current Ia (A) that trips a circuit-breaker within a time in s; undefined for a curve without a row. */
export function operatingCurrent(
  multiples: readonly OperatingMultiple[],
  breaker: Breaker,
  time: number,
): Derived | undefined {
  // Rows of one curve stand slowest first: a longer time may need less current.
  const row = multiples.find(({ curve, from }) => curve === breaker.curve && time >= from);
  if (!row) return undefined;
  const terms = [as("m", row.multiple), as("In", breaker.rating)];
  const value = row.multiple.value * breaker.rating.value;
  return derive("Ia", value, "current", "A", "m · In", terms, row.multiple.origin.source);
}

const bound: Source = {
  title: "BS 7671:2018 and IEC 60364-4-41",
  clause: "411.4.4, Zs ≤ U0 · Cmin / Ia (Cmin is British)",
  basis: "read",
};

/** Largest Zs (Ω) at which a device's operating current still flows. Voltage to earth in V; Cmin is a number. */
export function largestLoop(voltage: Figure, minimumFactor: Figure, operating: Figure): Derived {
  const terms = [as("U0", voltage), as("Cmin", minimumFactor), as("Ia", operating)];
  const value = (voltage.value * minimumFactor.value) / operating.value;
  return derive("Zs,max", value, "resistance", "ohm", "U0 · Cmin / Ia", terms, bound);
}

const residual: Source = {
  title: "BS 7671:2018 and IEC 60364-4-41",
  clause: "411.5.3, RA · IΔn ≤ 50 V",
  basis: "read",
};

/** Largest loop impedance, or electrode resistance, (Ω) at which an RCD keeps the touch voltage (V) down. IΔn in A. */
export function largestLoopWithResidual(touchVoltage: Figure, residualCurrent: Figure): Derived {
  const terms = [as("UL", touchVoltage), as("IΔn", residualCurrent)];
  const value = touchVoltage.value / residualCurrent.value;
  return derive("Zs,max", value, "resistance", "ohm", "UL / IΔn", terms, residual);
}

/** Largest Zs of fuses, printed for one voltage to earth with Cmin in it. */
export interface FuseLoops {
  /** The word of the fuse's `category`. */
  readonly category: string;
  /** Disconnection within this time, s. */
  readonly within: number;
  /** Voltage to earth that the figures hold for, V. */
  readonly voltage: number;
  /** By rated current in A. */
  readonly loops: ReadonlyMap<number, Given>;
}

/**
 * Largest Zs (Ω) of a fuse that is to operate within a time (s): from the slowest table that is quick enough. Undefined
 * for a rating without a figure, or another voltage to earth.
 */
export function largestFuseLoop(
  tables: readonly FuseLoops[],
  fuse: { readonly category: string; readonly rating: number; readonly voltage: number },
  time: number,
): Given | undefined {
  return tables
    .filter(({ category, within, voltage }) => {
      return category === fuse.category && within <= time && Math.abs(voltage - fuse.voltage) < 0.5;
    })
    .sort((a, b) => b.within - a.within)[0]
    ?.loops.get(fuse.rating);
}
