import type { Mode } from "../circuit/modes.js";

/* What is live and how to isolate, as plain data: every output prints it from here and from nothing else. */

/** What is live with some devices open. */
export interface LiveReport {
  /** "by day, with the grid and in an island". */
  readonly asked: string;
  readonly modes: readonly Mode[];
  /** Devices that were asked to be open. */
  readonly open: readonly string[];
  /** Those of them that were traced as closed all the same. */
  readonly notCounted: readonly NotCounted[];
  /** Places that the same sources reach in the same way, in the order of the text. */
  readonly places: readonly LivePlace[];
  /** What no source reaches: dead if it is wired as written. */
  readonly dead: readonly string[];
  /** The same by thing and terminal; what nothing is joined to is left out. */
  readonly things: readonly LiveThing[];
  /** What goes on when the public supply is gone; empty where no island was asked about. */
  readonly goesOn: readonly GoesOn[];
  /** Where neutral is tied to earth in the modes asked about; empty where nothing goes on without the grid. */
  readonly neutralEarth: readonly NeutralEarthReport[];
  /** The text has errors: what they touch is not in the circuit, and nothing may be called dead. */
  readonly incomplete: boolean;
  readonly cautions: readonly string[];
}

/** What one backup port feeds, whatever is opened. */
export interface GoesOn {
  readonly inverter: string;
  /** Its rated power, in words; absent where it is not stated. */
  readonly power?: string;
  /** Devices of the ways that go on. */
  readonly circuits: readonly string[];
  readonly text: string;
}

export interface NeutralEarthReport {
  readonly supply: Mode["supply"];
  readonly text: string;
}

export interface LivePlace {
  /** Things all of whose terminals belong here by their name, others by terminal. */
  readonly where: readonly string[];
  readonly arrivals: readonly LiveArrival[];
}

export interface LiveThing {
  readonly thing: string;
  readonly kind: string;
  readonly terminals: readonly { readonly terminal: string; readonly arrivals: readonly LiveArrival[] }[];
}

/** How energy of one source is at a place. */
export interface LiveArrival {
  readonly source: string;
  readonly kind: "pv" | "battery" | "grid" | "generator" | "stored";
  readonly through: "conductor" | "converter" | "stored";
  /** Inverters passed, from the source. */
  readonly inverters: readonly string[];
  /** What ends it by itself when the grid is lost. */
  readonly untilDisconnects?: string;
  /** Dead in an island, and live without warning. */
  readonly mayReturn?: true;
  /** For stored energy: the maker's wait, in words; absent where nobody stated it, which is never zero. */
  readonly wait?: string;
  /** For a string by conductors: its highest open-circuit voltage, where it can be worked out. */
  readonly upTo?: string;
  /** In which of the modes asked about. */
  readonly modes: readonly Mode[];
  /** All of it in words. */
  readonly text: string;
}

/** A device whose opening is not relied upon. */
export interface NotCounted {
  readonly device: string;
  readonly why: string;
  /** The property that would settle it. */
  readonly missing?: string;
}

/** How to make one thing dead. */
export interface IsolationReport {
  readonly thing: string;
  readonly kind: string;
  /** "Open Q1 and Q4: INV is dead, if it is wired as written. Prove it dead." */
  readonly open: string;
  /** Sets of devices that do it, smallest first; empty where none does. */
  readonly sets: readonly (readonly string[])[];
  /** All but the first of them in words: "Q1, Q2 and CU.K9". */
  readonly instead: readonly string[];
  /** False where there may be more sets. */
  readonly complete: boolean;
  /** In which order: from the maker's sheet, or that it is not stated. */
  readonly order: readonly OrderReport[];
  readonly waits: readonly WaitReport[];
  /** Parts of the thing that sources reach whatever is opened. */
  readonly staysLive: readonly { readonly terminal: string; readonly source: string; readonly text: string }[];
  /** All that is still live once the first set is open: on the thing itself, then behind the devices of the set. */
  readonly stillLive: readonly string[];
  /** The nearest devices that part it from what has no known source, and so are in no set. */
  readonly besides: readonly string[];
  /** Devices near it that do not count, and why. */
  readonly notCounted: readonly NotCounted[];
  readonly incomplete: boolean;
  readonly cautions: readonly string[];
}

export interface OrderReport {
  readonly inverter: string;
  /** Sides as the maker's sheet orders them, each with the nearest devices that open it; absent where it is not stated. */
  readonly sides?: readonly { readonly side: string; readonly devices: readonly string[] }[];
  readonly text: string;
}

export interface WaitReport {
  readonly inverter: string;
  /** The maker's figure, in words; absent where it is not stated. */
  readonly wait?: string;
  readonly text: string;
}
