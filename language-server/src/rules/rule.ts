import type { Zone } from "../circuit/array.js";
import type { Installation } from "../circuit/installation.js";
import type { Piece } from "../circuit/piece.js";
import type { Plant } from "../circuit/plant.js";
import type { Severity } from "../design/model.js";
import type { Item, Part, Run, Thing } from "../design/things.js";
import type { Figure, Source } from "../physics/figure.js";
import type { Judge } from "./judge.js";

/** Which word of a thing's declaration is meant: its name, one of its properties, or a word of its sentence. */
export interface Spot {
  readonly thing: Thing;
  readonly word?: "name" | "count" | "part" | "length" | "cable" | "from" | "to";
  readonly property?: string;
}

/** A run into which a device is to be put, and at which of its ends the source lies that the device opens. */
export interface CutRun {
  readonly run: Run;
  readonly source: "from" | "to";
}

/** A device inside a board or a combiner. */
export interface NestedDevice {
  readonly part: Part;
  /** The way of a board that it takes; a device without one comes before the bar. */
  readonly way?: number;
  /** The end of a run that lands on the board or combiner, or on another device in it, and is to land on this one. */
  readonly landing?: { readonly run: Run; readonly end: "from" | "to" };
  /** A device outside that it feeds, by a run of its own. */
  readonly feeds?: Part;
  /** What it is said to serve, where that is there already. */
  readonly serves?: Item;
}

/** A change of a choice that would mend a finding. Says what to change; the editor knows where that is written. */
export type Fix = { readonly title: string; readonly preview?: string } & (
  | { readonly does: "set-count"; readonly thing: Thing; readonly count: number }
  | { readonly does: "set-part"; readonly thing: Thing; readonly part: string }
  | { readonly does: "set-cable"; readonly thing: Thing; readonly cable: string }
  /** Sets or inserts a property that is a choice of the design; `value` as it would be written. */
  | { readonly does: "set-property"; readonly thing: Thing; readonly property: string; readonly value: string }
  | { readonly does: "set-end"; readonly thing: Thing; readonly end: "from" | "to"; readonly terminal: string }
  /** The number of a way of a board: the device moves to another place of it. */
  | { readonly does: "set-way"; readonly thing: Thing; readonly way: number }
  /** A device of a part in each of some runs, which it cuts in two; `thing` is the first of them. */
  | { readonly does: "insert-device"; readonly thing: Run; readonly cuts: readonly CutRun[]; readonly part: Part }
  /** A device of a part at a terminal, by a run of its own beside `thing`, which is a run that lands there. */
  | { readonly does: "add-tee"; readonly thing: Run; readonly terminal: string; readonly part: Part }
  /** Devices in a board or a combiner, which is `thing`. */
  | { readonly does: "nest-devices"; readonly thing: Item; readonly devices: readonly NestedDevice[] }
);

/** A property that a check lacks. */
export interface Missing {
  readonly thing: Thing;
  readonly property: string;
}

/** Something worth pointing at beside the finding: the limit's own line, the other device. */
export interface Related {
  readonly spot: Spot;
  readonly message: string;
}

export interface Pass {
  readonly outcome: "pass";
  /** Absent for yes-or-no checks. */
  readonly value?: Figure;
  readonly limit?: Figure;
  /** Share of the limit that is used; above 1 would not be a pass. Undefined for yes-or-no checks. */
  readonly utilisation?: number;
  /** What was compared with what, when a subject passes several comparisons: "the limit of INV"; or what holds. */
  readonly against?: string;
}
export interface Finding {
  readonly outcome: "finding";
  /** Defaults to the rule's. */
  readonly severity?: Severity;
  /** What is wrong, with both numbers. */
  readonly what: string;
  /** Why it matters, in one clause. */
  readonly why: string;
  /** What to do. */
  readonly todo: string;
  readonly spot: Spot;
  readonly value?: Figure;
  readonly limit?: Figure;
  readonly related?: readonly Related[];
  /** Worked out only when somebody asks for them, against the parts that are then in scope. */
  readonly fixes?: (judge: Judge) => readonly Fix[];
}
export interface NotApplicable {
  readonly outcome: "not-applicable";
  readonly reason: string;
}
export interface NotChecked {
  readonly outcome: "not-checked";
  readonly missing: readonly Missing[];
  /** For what no property can say: "S1 is wired to no inverter". */
  readonly reason?: string;
}
export type Outcome = Pass | Finding | NotApplicable | NotChecked;

/** Headings of the rule catalogue. */
export type Section =
  | "Strings and trackers"
  | "D.c. cables, connectors, isolation"
  | "Surge"
  | "A.c. side and the existing board"
  | "Battery and backup"
  | "Earthing, grid, papers";

/**
 * What a rule finds its subjects in. An array zone, a plant, and a piece of wiring with all its arrays and plants, are
 * judged again only when a line of theirs changed; the whole installation is judged at every edit, so what is asked of it has to be cheap.
 */
export type Scope<Subject> =
  | { readonly over?: "array"; readonly subjects: (zone: Zone) => Iterable<Subject> }
  | { readonly over: "plant"; readonly subjects: (plant: Plant) => Iterable<Subject> }
  | { readonly over: "piece"; readonly subjects: (piece: Piece) => Iterable<Subject> }
  | { readonly over: "installation"; readonly subjects: (installation: Installation) => Iterable<Subject> };

/**
 * One rule. The page, the hover, the link of its diagnostics and its row in the rule table all come from this object.
 * `Subject` is whatever the rule looks at once: a string, a device with its array, a run.
 */
export type Rule<Subject = unknown> = Scope<Subject> & {
  /** Plain words, stable, never renumbered. */
  readonly id: string;
  readonly section: Section;
  readonly severity: Severity;
  /** One line: what holds when the rule is kept. */
  readonly title: string;
  /** For its page: what it does. */
  readonly what: string;
  /** For its page: why it matters. */
  readonly why: string;
  /** Where it comes from, per rule set. A rule set that is not named does not have the rule. */
  readonly sources: Readonly<Record<string, readonly Source[]>>;
  /** A complete design that keeps the rule, and one that breaks it; both are run by the tests and shown on its page. */
  readonly examples: { readonly holds: string; readonly breaks: string };
  /** Further subjects, found in plants: a rule about surge protection looks at both sides of an inverter. */
  readonly alsoInPlants?: (plant: Plant) => Iterable<Subject>;
  /** The thing a subject's check is reported under. */
  readonly thing: (subject: Subject) => Thing;
  readonly judge: (subject: Subject, judge: Judge) => Outcome | readonly Outcome[];
};

/** Keeps the subject's type inside the file that defines the rule. */
export function rule<Subject>(definition: Rule<Subject>): Rule {
  return definition as unknown as Rule;
}
