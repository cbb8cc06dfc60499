import type { Item, Run } from "../design/things.js";
import type { Terminal } from "./circuit.js";
import type { FeedTree, Path } from "./feed.js";

/**
 * The a.c. side, the batteries and what is backed up, as the person on site sees them: plain data for rules.
 * One plant is everything that conductors and inverters join; the array side is in `Zone`.
 */
export interface Plant {
  /** The supply's id; without one the first board's, inverter's, battery's or generating unit's. */
  readonly id: string;
  readonly supplies: readonly Item[];
  readonly boards: readonly BoardView[];
  readonly inverters: readonly InverterView[];
  readonly batteries: readonly BatteryView[];
  readonly generators: readonly GeneratorView[];
  readonly changeovers: readonly Item[];
  readonly meters: readonly Item[];
  readonly transformers: readonly TransformerView[];
  /** Surge protective devices on the a.c. side. */
  readonly surge: readonly AcSurgeTap[];
  /** Every run that carries a.c., with what lies before and beyond it. */
  readonly lines: readonly Line[];
  /** Which joints of neutral and earth are closed, by mode. */
  readonly neutralEarth: NeutralEarth;
  /** The block of that name; one for the whole design. */
  readonly earthing?: Item;
  readonly electrodes: readonly Item[];
  /** How the supply, and each backup port, feeds everything that conductors join to it. */
  readonly trees: readonly FeedTree[];
  /**
   * Every declaration that a rule about this plant may read, in a fixed order: equal elements, equal results.
   * The rule set and the site are the caller's to add. The array side is not in it: what stays live, and what isolates,
   * depends on the whole circuit and is a question for the installation (`always-live.ts`, `cuts.ts`).
   */
  readonly signature: readonly unknown[];
}

export interface BoardView {
  readonly item: Item;
  /** Between its incoming terminal and the bar, in order: main switch, meter. */
  readonly mainSwitches: readonly Item[];
  /** RCDs that feed a section of it. */
  readonly rcds: readonly Item[];
  readonly circuits: readonly BoardCircuit[];
  /** Who feeds its bar through its incoming terminal, the supply first. Empty: nothing that is declared. */
  readonly feeds: readonly Feed[];
}

/** A source that can feed a place by conductors alone, and the way there. */
export interface Feed {
  /** The supply, the generating unit, or the inverter. */
  readonly source: Item;
  /** Where it starts: `GRID.out`, `INV.backup`. */
  readonly root: Terminal;
  /** In which mode the way is closed; a changeover on it decides. */
  readonly mode: "grid" | "island" | "both";
  /** From the root to the place. */
  readonly path: Path;
}

/** One way of a board: its protective device and all that it feeds up to the next board or inverter. */
export interface BoardCircuit {
  readonly board: Item;
  readonly way?: number;
  /** Breaker, RCBO, fuse, or whatever else sits on the way. */
  readonly device: Item;
  /** RCDs between the bar and the device, from the bar outwards. */
  readonly rcds: readonly Item[];
  /** What `serves` says: an item, or words. */
  readonly serves?: Item;
  readonly servesText?: string;
  readonly beyond: Beyond;
}

/** What a piece of wiring feeds, up to the next board, inverter or load, and what it passes. */
export interface Beyond {
  readonly runs: readonly Run[];
  readonly loads: readonly Item[];
  readonly boards: readonly Item[];
  /** Grid ports that feed into it: `INV.ac`. */
  readonly gridPorts: readonly Item[];
  readonly backupPorts: readonly Item[];
  readonly generators: readonly Item[];
  readonly surge: readonly Item[];
  /** Isolators, meters, breakers and fuses on the way. */
  readonly devices: readonly Item[];
}

export interface InverterView {
  readonly inverter: Item;
  readonly trackers: readonly Item[];
  readonly grid?: GridConnection;
  readonly backup?: BackupConnection;
  /** The battery port, and the batteries wired to it. */
  readonly storage?: { readonly port: Item; readonly batteries: readonly Item[] };
}

export interface GridConnection {
  /** The `ac` block. */
  readonly port: Item;
  /** From the port to the supply; undefined where no supply is reached. */
  readonly toSupply?: Path;
  /** The way on which it lands at the first board; undefined where it meets none. */
  readonly circuit?: BoardCircuit;
  /** Opening devices between the port and the first board (or the supply), from the port. */
  readonly isolators: readonly Item[];
}

export interface BackupConnection {
  /** The `backup` block. */
  readonly port: Item;
  /** Boards fed through their incoming terminal in island mode. */
  readonly boards: readonly Item[];
  /** Every way that goes on in island mode, on all of those boards. */
  readonly circuits: readonly BoardCircuit[];
  /** Loads that go on in island mode. */
  readonly loads: readonly Item[];
  readonly changeovers: readonly Item[];
}

export interface BatteryView {
  readonly battery: Item;
  /** The battery port that it reaches. */
  readonly port?: Item;
  /** From its cells to the port; undefined where it reaches none. */
  readonly path?: Path;
  /** Devices that can open both poles, from the cells: nested, in line, or the battery's own built-in isolator. */
  readonly isolators: readonly Item[];
  /** Fuses and breakers on the way, nested ones first. The built-in fuse is a property of the battery. */
  readonly protection: readonly Item[];
}

export interface GeneratorView {
  readonly generator: Item;
  readonly toSupply?: Path;
  readonly circuit?: BoardCircuit;
}

export interface TransformerView {
  readonly transformer: Item;
  /** The run it is clipped on; undefined where `around` names none that exists. */
  readonly run?: Run;
  readonly readBy?: Item;
  /** Loads, ports and generating units that the supply feeds through that run; both empty where it feeds it not. */
  readonly seen: readonly Item[];
  /** Those that it feeds without passing that run: the transformer cannot see them. */
  readonly unseen: readonly Item[];
}

export interface AcSurgeTap {
  readonly spd: Item;
  /** The run that ends at it; its length is a lead. */
  readonly run?: Run;
  /** The nearest protective device towards the supply; undefined: only the supplier's fuse. */
  readonly protectedBy?: Item;
  /** From the supply to it; undefined where no supply reaches it. */
  readonly path?: Path;
}

/** One run on the a.c. side. */
export interface Line {
  readonly run: Run;
  /** Its ends as seen from the source that feeds it: the supply, or the backup port where no supply does. */
  readonly near: Terminal;
  readonly far: Terminal;
  readonly root: Terminal;
  /** The nearest protective device on the near side; undefined: the supplier's fuse, or none. */
  readonly protectedBy?: Item;
  /** What it feeds up to the next board; the ports among it feed back through it. */
  readonly beyond: Beyond;
  /** The way of a board that it belongs to; undefined for tails and for what is wired before any board. */
  readonly circuit?: BoardCircuit;
}

/** A joint of neutral and earth that is closed in a mode. */
export interface NeutralEarthLink {
  /** The `link` item; undefined for the supplier's own. */
  readonly link?: Item;
  readonly supply?: Item;
  /** `perhaps`: a fact is missing that decides it; `missing` names it. */
  readonly closed: "yes" | "perhaps";
  readonly missing?: { readonly thing: Item; readonly property: string };
}
export interface NeutralEarth {
  readonly grid: readonly NeutralEarthLink[];
  /** For what is backed up; empty and meaningless where nothing is. */
  readonly island: readonly NeutralEarthLink[];
}
