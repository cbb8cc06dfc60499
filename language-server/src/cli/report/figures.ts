import { fromSi } from "@sunwright/grammar";
import { unitByMagnitude } from "../../physics/display.js";
import type { Figure } from "../../physics/figure.js";
import { formatApart, formatFigure, workingLine, workingLines } from "../../physics/working.js";
import type { FigureReport } from "./report.js";

/** A figure in the unit that it is printed in. */
export function figureReport(figure: Figure): FigureReport {
  return inUnit(figure, figure.unit, formatFigure(figure));
}

/** Both sides of a comparison: in one unit, their texts with as many digits as it takes to tell them apart. */
export function compared(value?: Figure, limit?: Figure): { value?: FigureReport; limit?: FigureReport } {
  if (!value || !limit) return { value: value && figureReport(value), limit: limit && figureReport(limit) };
  const shared = value.dimension === limit.dimension ? limit.unit || value.unit : undefined;
  const [valueText, limitText] = formatApart(value, limit);
  return { value: inUnit(value, shared, valueText), limit: inUnit(limit, shared, limitText) };
}

/** How a figure and the limit it is held against were made, one line a step. */
export function workings(value?: Figure, limit?: Figure): string[] {
  const lines = value ? workingLines(value) : [];
  if (!limit) return lines;
  const own = limit.kind === "given" ? [workingLine(limit)] : workingLines(limit);
  return [...lines, ...own.filter((line) => !lines.includes(line))];
}

function inUnit(figure: Figure, wanted: string | undefined, text: string): FigureReport {
  const unit = wanted || unitByMagnitude(figure.value, figure.dimension);
  const value = fromSi(figure.value, unit);
  return { symbol: figure.symbol, value: Number.isFinite(value) ? tidy(value) : null, unit, text };
}

/** Conversion to and from SI leaves 38.900000000000006; twelve digits are more than anything here is known to. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
