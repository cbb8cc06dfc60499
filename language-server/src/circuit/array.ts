import type { Item, Run } from "../design/things.js";
import type { Terminal } from "./circuit.js";

/** One thing met on the way from a string to its tracker. */
export type Step = Run | Item;

/** A string with everything between its terminals and the tracker, in order from the roof. */
export interface StringPath {
  readonly string: Item;
  /** Runs and through-devices (isolators, fuses, combiners); empty where it is wired to nothing. */
  readonly steps: readonly Step[];
}

/** A surge protective device on the d.c. side and where it is tapped. */
export interface SurgeTap {
  readonly spd: Item;
  /** The run that ends at it; its length is a lead, not a part of the route. */
  readonly run?: Run;
  /** Where its lead meets the way of the strings. */
  readonly at?: Terminal;
  /** Metres of cable from the tap to the tracker terminal, and to the furthest string; undefined where a length is missing. */
  readonly toInverter?: number;
  readonly toArray?: number;
  /** Opening devices between the tap and every string that reaches it; empty: it is live whenever there is light. */
  readonly isolatedBy: readonly Item[];
  /** Fuses between it and every string that reaches it; empty: a string feeds it through no fuse. */
  readonly fusedBy: readonly Item[];
}

/** Strings joined on one tracker with all that lies between: what IEC 62548 calls a PV array with its cables. */
export interface PvArray {
  /** `INV.pv1`, or the first string's id where no tracker is reached. */
  readonly id: string;
  readonly inverter?: Item;
  readonly tracker?: Item;
  readonly strings: readonly StringPath[];
  readonly surge: readonly SurgeTap[];
  /** Runs that carry array current, with the strings that feed them. */
  readonly runs: ReadonlyMap<Run, readonly Item[]>;
  /** Isolators, fuses and combiners with the strings that feed them. */
  readonly devices: ReadonlyMap<Item, readonly Item[]>;
  /** Runs that land directly on the tracker's terminal. */
  readonly landing: readonly Run[];
  /** Every terminal that is joined to the array, with all that lands on it. */
  readonly terminals: readonly Terminal[];
}

/** One inverter with the arrays on its trackers: what has to be computed again together when one line of it changes. */
export interface Zone {
  /** The inverter's id, or the array's where there is none. */
  readonly id: string;
  readonly inverter?: Item;
  readonly arrays: readonly PvArray[];
}
