import { dimensions, displayUnit, unitsOf } from "@sunwright/grammar";
import * as l10n from "@vscode/l10n";
import type { Quantity, Value } from "../../design/model.js";
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

function oneQuantity(quantity: Quantity): string | undefined {
  const { si, dimension, unit, written } = quantity;
  if (unit === "" || !Number.isFinite(si)) return undefined;
  const own = `${shortNumber(written, 12)} ${displayUnit(unit)}`;
  const others = unitsOf(dimension)
    .filter((other) => other.name !== unit)
    .map((other) => inUnit(si, other.name))
    .filter((text) => text !== own && isReadable(text));
  const siUnit = dimensions[dimension].si;
  const inSi = siUnit === "" || siUnit === unit ? "" : `${shortNumber(si)} ${displayUnit(siUnit)}`;
  const same = [...new Set([inSi, ...others].filter(Boolean))].slice(0, 4);
  const title = dimensions[dimension].title;
  return same.length === 0 ? `${code(own)}, a ${title}` : `${code(own)}, a ${title}: the same as ${same.join(", ")}`;
}

/** Between a thousandth and ten thousand: beyond it a unit does not help to picture the size. */
function isReadable(text: string): boolean {
  const size = Math.abs(Number.parseFloat(text.replace("−", "-")));
  return size === 0 || (size >= 1e-3 && size < 1e4);
}
