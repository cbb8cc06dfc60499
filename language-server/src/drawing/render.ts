import { badge, placeMarks } from "./badges.js";
import type { Diagram } from "./diagram.js";
import type { Placed } from "./layout.js";
import { group, type Picture, type Shape } from "./picture.js";
import { columnWidth, findingsColumn, linesLegend, sheetFrame, titleBlock } from "./sheet.js";
import { svgOf } from "./svg.js";
import { light, type Theme } from "./themes.js";
import { wireShapes } from "./wires.js";

export interface RenderOptions {
  /** With title block, legend and findings beside the drawing; a panel that shows these elsewhere goes without. */
  readonly sheet?: boolean;
}

const margin = 36;

/** A placed diagram as vector shapes. */
export function pictureOf(placed: Placed, { sheet = true }: RenderOptions = {}): Picture {
  const drawing = group(drawingShapes(placed), { sort: "drawing", x: margin, y: margin });
  const { title } = placed.diagram;
  const about = { title: `Single-line diagram of ${title.site}`, description: describe(placed.diagram) };
  const width = placed.width + 2 * margin;
  if (!sheet) return { width, height: placed.height + 2 * margin, shapes: [drawing], ...about };

  const columnX = Math.max(width, 640);
  const lines = linesLegend(columnX, 24);
  const findings = findingsColumn(placed.diagram, columnX, 24 + lines.height + 18);
  const foot = titleBlock(placed.diagram, columnX, 0).height;
  const column = 24 + lines.height + 18 + findings.height + 20 + foot + 12;
  const total = columnX + columnWidth + 12;
  // At least the proportions of a sheet of the A series, so that it fills the paper it is printed on.
  const height = Math.max(placed.height + 2 * margin, column, Math.round(total / Math.SQRT2));
  const block = titleBlock(placed.diagram, columnX, height - 12);
  return {
    width: total,
    height,
    shapes: [...sheetFrame(total, height, columnX), drawing, ...lines.shapes, ...findings.shapes, ...block.shapes],
    ...about,
  };
}

/** A placed diagram as an SVG document. */
export function renderSvg(placed: Placed, theme: Theme = light, options: RenderOptions = {}): string {
  return svgOf(pictureOf(placed, options), theme);
}

function drawingShapes(placed: Placed): Shape[] {
  return [
    ...placed.wires.map(wireShapes),
    ...placed.nodes.map(({ node, box, x, y }) =>
      group(box.shapes, { id: node.id, sort: `item ${node.symbol}`, label: node.description, x, y }),
    ),
    ...placeMarks(placed).map(({ mark, x, y }) => badge(mark, x, y)),
  ];
}

function describe({ nodes, wires, marks, title }: Diagram): string {
  const runs = wires.filter(({ isRun }) => isRun).length;
  return `${nodes.length} items and ${runs} runs; ${marks.length} findings and departures. ${title.cautions.join(" ")}`;
}
