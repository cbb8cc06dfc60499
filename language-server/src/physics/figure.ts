import type { Dimension } from "@sunwright/grammar";
import type { Place } from "../place.js";

/**
 * A published source: standard or book, its edition, the clause or table.
 * `basis` says how well we know it: read by us in a published page, only from memory (outputs then add "confirm
 * against the current edition"), or common practice of the trade without a published source.
 */
export interface Source {
  readonly title: string;
  readonly clause?: string;
  readonly basis: "read" | "memory" | "practice" | "arithmetic";
}

/** Where a given figure comes from. Whatever is `assumed` is listed in every output that used it. */
export interface Origin {
  readonly kind: "stated" | "assumed" | "rule-set" | "table";
  /** For people: "Hollin430, open-circuit-voltage", or the reason of an assumption, or the table's name. */
  readonly text: string;
  /** For stated figures: the property in the text. */
  readonly place?: Place;
  readonly source?: Source;
  /** For stated figures: the text says otherwise, or nothing; somebody asks what would be if it were stated. */
  readonly whatIf?: true;
}

/** A number that was given to us. SI units (kelvin for temperatures). */
export interface Given {
  readonly kind: "given";
  /** The standards' symbol: Uoc, Isc, Tmin. */
  readonly symbol: string;
  readonly value: number;
  readonly dimension: Dimension;
  /** The unit its writer used; outputs print the figure back in it. */
  readonly unit?: string;
  readonly origin: Origin;
}

/**
 * A number that knows how it was made.
 *
 * `formula` is written with the symbols of `terms`, e.g. `"n · Uoc · (1 + β · (Tmin − 25 °C))"`; the working is
 * produced from it only when somebody asks (see `working.ts`), so carrying it costs nothing.
 */
export interface Derived {
  readonly kind: "derived";
  readonly symbol: string;
  readonly value: number;
  readonly dimension: Dimension;
  readonly unit?: string;
  readonly formula: string;
  readonly terms: readonly Figure[];
  readonly source?: Source;
  readonly note?: string;
}

export type Figure = Given | Derived;

/** Every given figure below a figure, each once, in the order of first use. */
export function givens(figure: Figure, into: Set<Given> = new Set()): Set<Given> {
  if (figure.kind === "given") into.add(figure);
  else for (const term of figure.terms) givens(term, into);
  return into;
}

/** What was assumed on the way to a figure. */
export function assumptions(figure: Figure): Given[] {
  return [...givens(figure)].filter((given) => given.origin.kind === "assumed");
}

/** What somebody supposed on the way to a figure. */
export function suppositions(figure: Figure): Given[] {
  return [...givens(figure)].filter((given) => given.origin.whatIf);
}
