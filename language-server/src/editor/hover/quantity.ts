import { dimensions, displayUnit, fromSi, unitsOf } from "@sunwright/grammar";
import * as l10n from "@vscode/l10n";
import { withArticle } from "../../design/article.js";
import type { Quantity, Value } from "../../design/model.js";
import { formatValue } from "../../physics/display.js";
import { code, inUnit, shortNumber } from "../markdown.js";

/** A quantity in the SI unit and in the other units that people use for it, those of a readable size. */
export function quantityText(value: Value): string | undefined {
  if (value.kind === "quantity") return oneQuantity(value);
  if (value.kind === "range") {
    const low = oneQuantity(value.low);
    const high = oneQuantity(value.high);
    return low && high && `${l10n.t("Low end: {0}", low)}\n\n${l10n.t("High end: {0}", high)}`;
  }
  return undefined;
}

/** Wires are drawn to whole gauges only. */
function isGauge(size: number): boolean {
  return Math.abs(size - Math.round(size)) < 0.02;
}

function oneQuantity(quantity: Quantity): string | undefined {
  const { si, dimension, unit } = quantity;
  if (unit === "" || !Number.isFinite(si)) return undefined;
  const own = formatValue(si, dimension, unit, 12);
  const others = unitsOf(dimension)
    .filter((other) => other.name !== unit && !(other.name === "AWG" && !isGauge(fromSi(si, other.name))))
    .map((other) => inUnit(si, other.name))
    .filter((text) => text !== own && isReadable(text, 1e4));
  const siUnit = dimensions[dimension].si;
  const inSi = siUnit === "" || siUnit === unit ? "" : `${shortNumber(si)} ${displayUnit(siUnit)}`;
  const same = [...new Set([isReadable(inSi, 1e5) ? inSi : "", ...others].filter(Boolean))].slice(0, 4);
  const what = `${code(own)}, ${withArticle(dimensions[dimension].title)}`;
  return same.length === 0 ? what : `${what}: the same as ${same.join(", ")}`;
}

/** From a thousandth up to some thousands: beyond it a unit does not help to picture the size. */
function isReadable(text: string, below: number): boolean {
  const size = Math.abs(Number.parseFloat(text.replace("−", "-")));
  return size === 0 || (size >= 1e-3 && size < below);
}
