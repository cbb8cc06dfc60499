import type { Dimension } from "./dimensions.js";
import { nearestUnit } from "./nearest-unit.js";
import { findUnit, toSi } from "./units.js";

/** Something wrong in a quantity's text; `from` and `to` are offsets in that text. */
export interface QuantityProblem {
  readonly id: "decimal-comma" | "unknown-unit";
  readonly message: string;
  readonly from: number;
  readonly to: number;
  /** Replacements for the whole quantity, best first. */
  readonly suggestions: readonly { readonly title: string; readonly text: string }[];
}

export interface ParsedQuantity {
  /** The number as written: 18 for `18 m`, 0 for `1/0 AWG`. NaN where it cannot be read. */
  readonly written: number;
  /** ASCII spelling of the unit, also of an unknown one; empty for a bare number. */
  readonly unit: string;
  /** SI base units; NaN where the number or the unit cannot be read. */
  readonly si: number;
  /** Undefined for an unknown unit. */
  readonly dimension: Dimension | undefined;
  readonly problems: readonly QuantityProblem[];
}

/** Number, then whatever follows: sign, digits, point or comma, exponent; or a gauge of 1/0 … 4/0. */
const shape =
  /^([+\-−]?)(?:([1-4])\/0(?=[\s\u00a0]*AWG$)|(\d+)(?:([.,])(\d+))?([eE][+-]?\d+)?)([\s\u00a0\u202f]*)(.*)$/su;

/**
 * Reads a quantity's text: `18 m`, `−0.25 %/K`, `11`, `1/0 AWG`. Never throws: what cannot be read is a problem, with
 * the values NaN or undefined, so that nothing is computed from a guess.
 */
export function parseQuantity(text: string): ParsedQuantity {
  const match = shape.exec(text);
  if (!match) return { written: Number.NaN, unit: "", si: Number.NaN, dimension: undefined, problems: [] };
  const [, sign = "", aught, whole = "", separator, decimals, exponent = "", blanks = "", unitText = ""] = match;
  const problems: QuantityProblem[] = [];
  const negative = sign === "-" || sign === "−";
  const numberEnd = text.length - unitText.length - blanks.length;
  const rest = blanks + unitText;

  let written: number;
  if (aught !== undefined) {
    written = 1 - Number(aught);
  } else {
    written = Number(`${negative ? "-" : ""}${whole}${decimals === undefined ? "" : `.${decimals}`}${exponent}`);
  }
  if (separator === ",") {
    problems.push(decimalComma(`${sign}${whole}`, `${decimals}${exponent}`, rest, numberEnd));
    // `1,200` may be 1.2 or 1200: three orders of magnitude are no matter for a guess.
    if (decimals?.length === 3) written = Number.NaN;
  }

  if (unitText === "") return { written, unit: "", si: written, dimension: "number", problems };
  const unit = findUnit(unitText);
  if (unit) return { written, unit: unit.name, si: toSi(written, unit), dimension: unit.dimension, problems };

  problems.push(unknownUnit(text.slice(0, numberEnd), blanks, unitText, text.length));
  return { written, unit: unitText, si: Number.NaN, dimension: undefined, problems };
}

function decimalComma(before: string, after: string, rest: string, to: number): QuantityProblem {
  const decimal = `${before}.${after}${rest}`;
  const suggestions = [{ title: `Write a decimal point: ${decimal}`, text: decimal }];
  if (/^\d{3}(?!\d)/.test(after)) {
    const thousands = `${before}${after}${rest}`;
    suggestions.push({ title: `Write it without a separator: ${thousands}`, text: thousands });
  } else if (rest === "") {
    const two = `${before}, ${after}`;
    suggestions.push({ title: `Write two numbers: ${two}`, text: two });
  }
  const written = `${before},${after}`;
  return {
    id: "decimal-comma",
    message: `${written} has a comma; a comma separates the values of a list, so the number is in doubt. Write the decimals after a point.`,
    from: 0,
    to,
    suggestions,
  };
}

function unknownUnit(number: string, blanks: string, unitText: string, to: number): QuantityProblem {
  const near = nearestUnit(unitText);
  const names = near.map((unit) => unit.name);
  const advice =
    names.length > 0
      ? `Did you mean ${names.join(" or ")}?`
      : "Write one of the units of the property; completion after the number lists them.";
  const wrongCase = near.some((unit) => unit.name.toLowerCase() === unitText.toLowerCase());
  const reason = wrongCase ? "; the case of its letters counts (m is milli, M is mega)" : "";
  return {
    id: "unknown-unit",
    message: `${unitText} is not a unit${reason}. ${advice}`,
    from: to - unitText.length,
    to,
    suggestions: names.map((name) => {
      const text = `${number}${blanks === "" ? " " : blanks}${name}`;
      return { title: `Change to ${text}`, text };
    }),
  };
}
