import type { Severity } from "../design/model.js";

/**
 * The single-line diagram as plain data: what is drawn and how it is joined, without a place on the sheet.
 * Ids are those of the items and runs in the text, so that picture and text can point at each other.
 */
export interface Diagram {
  readonly title: TitleBlock;
  /** In the order of the text: the picture then moves as little as the text does. */
  readonly nodes: readonly Node[];
  readonly wires: readonly Wire[];
  /** Findings and departures, numbered from 1. */
  readonly marks: readonly Mark[];
}

/** What flows in it. An inverter has both. */
export type Current = "dc" | "ac" | "earth" | "both";
export type Side = "west" | "east";

/** One thing that is drawn by itself. */
export interface Node {
  /** The item's id. */
  readonly id: string;
  readonly symbol: SymbolName;
  readonly current: Current;
  /** First the name, then what is known of it; one line each. */
  readonly label: readonly string[];
  /** For those who hear the picture instead of seeing it. */
  readonly description: string;
  readonly ports: readonly Port[];
  readonly inside?: BoardInside | BoxInside;
}

/** Where wires land on a node. */
export interface Port {
  /** The terminal's id; where one terminal is drawn on both sides, with the side behind `@`. */
  readonly id: string;
  readonly side: Side;
  /** Printed inside the node: `pv1`. */
  readonly label?: string;
  /** Where it is another one than the node's. */
  readonly current?: Current;
}

/** A device drawn inside a board, a combiner box or a battery. */
export interface Device {
  readonly id: string;
  readonly symbol: SymbolName;
  readonly label: readonly string[];
  readonly description: string;
}

/** A distribution board: what lies before its bar, and its ways. */
export interface BoardInside {
  readonly is: "board";
  /** From the incoming terminal to the bar. */
  readonly mains: readonly Device[];
  readonly incoming: string;
  readonly sections: readonly Section[];
  /** Ways that nothing is on, folded into one line. */
  readonly unused?: string;
}
/** Ways that hang on the bar together: behind one RCD, or behind none. */
export interface Section {
  readonly rcd?: Device;
  readonly rows: readonly Row[];
}
export interface Row {
  readonly device: Device;
  readonly way?: number;
  /** What it serves in words; shown where no wire leaves the row. */
  readonly serves?: string;
  /** The outgoing terminal, where a wire is drawn to it. */
  readonly port?: string;
}

/** A combiner box, or a battery with devices of its own: rows joined on a bar, or one row in series. */
export interface BoxInside {
  readonly is: "combiner" | "battery";
  readonly rows: readonly Row[];
  /** In series behind the cells, for a battery. */
  readonly chain: readonly Device[];
}

/** One run, or the feed of a way whose cable nobody traced. */
export interface Wire {
  /** The run's id; `serves CU.K8` for a way that serves something without a run. */
  readonly id: string;
  /** Whether it is written as a run. */
  readonly isRun: boolean;
  readonly current: Exclude<Current, "both">;
  /** The end on the left, by port. */
  readonly from: WireEnd;
  readonly to: WireEnd;
  readonly label: readonly string[];
  readonly description: string;
}
export interface WireEnd {
  readonly node: string;
  readonly port: string;
}

export interface Mark {
  readonly number: number;
  /** The item or run that it is on; undefined where it is on a part, or on nothing that is drawn. */
  readonly at?: string;
  readonly severity: Severity;
  readonly rule: string;
  readonly text: string;
  /** A finding that the designer has answered for. */
  readonly departed: boolean;
}

export interface TitleBlock {
  readonly site: string;
  readonly ruleSet: string;
  readonly editions: readonly string[];
  readonly revision?: string;
  readonly date?: string;
  readonly designer?: string;
  readonly address?: string;
  /** How many checks came out how, in words; what was not checked is said with them. */
  readonly checks: string;
  readonly cautions: readonly string[];
}

export type SymbolName =
  | "array"
  | "isolator"
  | "fuse"
  | "breaker"
  | "rcd"
  | "rcbo"
  | "spd"
  | "inverter"
  | "battery"
  | "meter"
  | "earth"
  | "electrode"
  | "busbar"
  | "load"
  | "changeover"
  | "supply"
  | "generator"
  | "terminal-block"
  | "board"
  | "combiner"
  | "continuation"
  | "unknown";
