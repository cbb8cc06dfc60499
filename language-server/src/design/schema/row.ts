import type { Dimension } from "@sunwright/grammar";

/** What a property's value may be. */
export type Shape =
  | { readonly is: "quantity"; readonly dimensions: readonly Dimension[] }
  | { readonly is: "range"; readonly dimensions: readonly Dimension[] }
  | { readonly is: "count" }
  | { readonly is: "flag" }
  | { readonly is: "words"; readonly words: readonly string[] }
  | { readonly is: "text" }
  | { readonly is: "day" }
  /** The name of an item of one of these kinds. */
  | { readonly is: "mention"; readonly kinds: readonly string[] }
  | { readonly is: "list"; readonly of: Shape };

/**
 * One property of one kind of thing: the single source for completion, hover text, dimension checks, defaults and the
 * generated reference page. A new property is one more row, never a grammar change.
 */
export interface PropertyRow {
  readonly name: string;
  readonly shape: Shape;
  readonly help: string;
  /** The standards' symbol: Uoc, Isc, In. */
  readonly symbol?: string;
  /** Words under which a data sheet prints it. */
  readonly sheet?: string;
  /** Typical values, as one would write them. */
  readonly typical?: string;
  /** Used, and reported as assumed with its reason, where nothing is stated. Written as in a `.sun` file. */
  readonly assumed?: { readonly text: string; readonly reason: string };
  /** Completion offers these first. */
  readonly essential?: boolean;
  /** Said of the thing where it is fixed; no data sheet prints it. */
  readonly onSite?: boolean;
  /** Set where no check reads it: none yet, or none ever, because it is written for people. */
  readonly checked?: "not-yet" | "never";
  /** Amounts are never negative; `negative`: it always is, as voltage coefficients are; `either`: a meter's reading. */
  readonly sign?: "negative" | "either";
}

export interface KindRow {
  readonly kind: string;
  readonly title: string;
  readonly help: string;
  /** Kinds inside whose braces it may stand; absent: at the top level. */
  readonly within?: readonly string[];
  /** `item`: on the wall; `part`: on a catalogue sheet; `both`; `block`: a nameless or titled block such as `site`. */
  readonly declaredAs: "item" | "part" | "both" | "block";
  /** Terminals of an item of this kind. A board's or combiner's nested items add theirs. */
  readonly terminals: readonly string[];
  /** Whether its `in` and `out` are joined inside, and whether it can open that joint. */
  readonly through?: "fixed" | "opens";
  /** What it feeds into the circuit. */
  readonly source?: "pv" | "battery" | "grid" | "generator";
  readonly properties: readonly PropertyRow[];
}

type Options = Omit<PropertyRow, "name" | "shape" | "help">;

/** The same property of a kind of which no check reads it. */
export const unread = (row: PropertyRow): PropertyRow => ({ ...row, checked: "not-yet" });

const unreadTexts = {
  "not-yet": "No check reads this yet.",
  never: "It is for readers: no check depends on it.",
} as const;

/** What a property means, and whether anything is made of it: who states a fact should not think that it is checked. */
export function meaningOf({ help, checked }: PropertyRow): string {
  return checked === undefined ? help : `${help} ${unreadTexts[checked]}`;
}

/* Short constructors, so that a table of properties reads as a table. */
export const quantity = (
  name: string,
  dimensions: Dimension | readonly Dimension[],
  help: string,
  options: Options = {},
): PropertyRow => ({
  name,
  shape: { is: "quantity", dimensions: [dimensions].flat() as Dimension[] },
  help,
  ...options,
});
export const range = (name: string, dimension: Dimension, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "range", dimensions: [dimension] },
  help,
  ...options,
});
export const count = (name: string, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "count" },
  help,
  ...options,
});
export const flag = (name: string, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "flag" },
  help,
  ...options,
});
export const words = (name: string, list: readonly string[], help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "words", words: list },
  help,
  ...options,
});
export const text = (name: string, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "text" },
  help,
  ...options,
});
export const day = (name: string, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "day" },
  help,
  ...options,
});
export const list = (name: string, of: Shape, help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "list", of },
  help,
  ...options,
});
export const mention = (name: string, kinds: readonly string[], help: string, options: Options = {}): PropertyRow => ({
  name,
  shape: { is: "mention", kinds },
  help,
  ...options,
});
