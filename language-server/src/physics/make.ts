import type { Dimension } from "@sunwright/grammar";
import type { Derived, Figure, Given, Source } from "./figure.js";

/**
 * Ways to make figures. Plain object literals of one shape each: they are made by the thousand on every keystroke, so
 * nothing here formats text or copies what need not be copied.
 */

/** A derived figure; `formula` must be a constant text that uses the symbols of `terms`. SI units. */
export function derive(
  symbol: string,
  value: number,
  dimension: Dimension,
  unit: string | undefined,
  formula: string,
  terms: readonly Figure[],
  source?: Source,
  note?: string,
): Derived {
  return { kind: "derived", symbol, value, dimension, unit, formula, terms, source, note };
}

/** A figure that the text states. `value` in SI units, `unit` as its writer wrote it, `text` says where it stands. */
export function stated(symbol: string, value: number, dimension: Dimension, unit: string, text: string): Given {
  return { kind: "given", symbol, value, dimension, unit, origin: { kind: "stated", text } };
}

/** A figure that nobody stated; `reason` says why this one was taken. */
export function assumed(
  symbol: string,
  value: number,
  dimension: Dimension,
  unit: string,
  reason: string,
  source?: Source,
): Given {
  return { kind: "given", symbol, value, dimension, unit, origin: { kind: "assumed", text: reason, source } };
}

/** A figure read off a published table. */
export function tabulated(
  symbol: string,
  value: number,
  dimension: Dimension,
  unit: string,
  text: string,
  source: Source,
): Given {
  return { kind: "given", symbol, value, dimension, unit, origin: { kind: "table", text, source } };
}

/** A bare count, such as the number of strings that the circuit shows in parallel. */
export function counted(symbol: string, value: number, text: string): Given {
  return { kind: "given", symbol, value, dimension: "number", unit: "", origin: { kind: "stated", text } };
}

/** The same figure under the symbol that a formula knows it by; the figure itself where that is its symbol already. */
export function as<F extends Figure>(symbol: string, figure: F): F;
export function as(symbol: string, figure: Figure): Figure {
  if (figure.symbol === symbol) return figure;
  const { value, dimension, unit } = figure;
  if (figure.kind === "given") return { kind: "given", symbol, value, dimension, unit, origin: figure.origin };
  return derive(symbol, value, dimension, unit, figure.formula, figure.terms, figure.source, figure.note);
}
