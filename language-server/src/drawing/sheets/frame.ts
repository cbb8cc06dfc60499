import type { Diagram } from "../diagram.js";
import { line, rect, type Shape } from "../picture.js";
import { columnWidth, linesLegend, type Page, titleBlock } from "./columns.js";
import { findingsColumns } from "./findings.js";

/** A sheet around a drawing. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** By how much the drawing is moved. */
  readonly x: number;
  readonly y: number;
  readonly shapes: readonly Shape[];
}
interface Extent {
  readonly width: number;
  readonly height: number;
}

export const edge = 12;
const gap = 14;
const thick = { stroke: "ink", width: 1 } as const;

/** With everything else in a column on the right: for tall drawings. */
export function besideDrawing(diagram: Diagram, page: Page, { width, height: tall }: Extent): Sheet {
  const x = edge + width;
  const lines = linesLegend(x, edge + gap);
  const top = edge + gap + lines.height + gap;
  const findings = findingsColumns(diagram, page, x, top);
  const foot = titleBlock(diagram, page, x, 0).height;
  const height = Math.max(tall + 2 * edge, top + findings.height + gap + foot + edge);
  const total = x + columnWidth + edge;
  return {
    width: total,
    height,
    x: edge,
    y: Math.max(edge, (height - tall) / 2),
    shapes: [
      frame(total, height),
      line(x, edge, x, height - edge, thick),
      line(x, height - edge - foot, total - edge, height - edge - foot, thick),
      ...lines.shapes,
      ...findings.shapes,
      ...titleBlock(diagram, page, x, height - edge).shapes,
    ],
  };
}

/** With everything else in a strip at the foot: for wide drawings. */
export function belowDrawing(diagram: Diagram, page: Page, { width: wide, height: tall }: Extent): Sheet {
  const width = Math.max(wide, 2 * columnWidth) + 2 * edge;
  const columns = Math.max(1, Math.floor((width - 2 * edge - columnWidth) / columnWidth));
  const top = edge + tall;
  const blockX = width - edge - columnWidth;
  const foot = titleBlock(diagram, page, blockX, 0).height;
  // The legend of lines has a place of its own where there is one, and stands above the findings where there is none.
  const isApart = columns > 1;
  const lines = linesLegend(edge, top + gap / 2);
  const findingsX = isApart ? edge + columnWidth : edge;
  const findingsTop = isApart ? top + gap / 2 : top + gap + lines.height;
  const findings = findingsColumns(diagram, page, findingsX, findingsTop, Math.max(1, columns - 1));
  const height = Math.max(top + foot, findingsTop + findings.height + gap, top + lines.height + gap) + edge;
  return {
    width,
    height,
    x: Math.max(edge, (width - wide) / 2),
    y: edge,
    shapes: [
      frame(width, height),
      line(edge, top, width - edge, top, thick),
      line(blockX, top, blockX, height - edge, thick),
      ...lines.shapes,
      ...findings.shapes,
      ...titleBlock(diagram, page, blockX, height - edge).shapes,
    ],
  };
}

export function frame(width: number, height: number): Shape {
  return rect(edge, edge, width - 2 * edge, height - 2 * edge, { stroke: "ink", width: 1.4 });
}
