import type { Diagram, Mark } from "../diagram.js";
import { group, line, type Picture, type Shape, text } from "../picture.js";
import { columnWidth, type Page, pad, titleBlock } from "./columns.js";
import { entryOf } from "./findings.js";
import { edge, frame } from "./frame.js";

/** As many columns as stay readable on the paper that sheets are made for, the last of them for the title block. */
const columns = 5;
const size = { width: (columns + 1) * columnWidth + 2 * edge, height: 1400 } as const;
const top = edge + 40;

/** Sheets with nothing but findings, each drawn when it is known which it is. */
export function findingsSheets(diagram: Diagram, marks: readonly Mark[]): ((page: Page) => Picture)[] {
  const sheets: Shape[][] = [];
  let [column, filled] = [columns, 0];
  for (const { shapes, height } of marks.map(entryOf)) {
    if (filled + height > size.height - top - edge) {
      column++;
      filled = 0;
    }
    if (column >= columns) {
      sheets.push([]);
      [column, filled] = [0, 0];
    }
    sheets[sheets.length - 1]!.push(group(shapes, { x: edge + column * columnWidth, y: top + filled }));
    filled += height;
  }
  return sheets.map((shapes) => (page) => sheet(diagram, shapes, page));
}

function sheet(diagram: Diagram, entries: readonly Shape[], page: Page): Picture {
  const x = edge + columns * columnWidth;
  return {
    ...size,
    title: `Findings on ${diagram.title.site}, sheet ${page.number} of ${page.of}`,
    description: `${diagram.marks.length} findings and departures.`,
    shapes: [
      frame(size.width, size.height),
      line(x, edge, x, size.height - edge, { stroke: "ink", width: 1 }),
      text(edge + pad, edge + 26, "Findings", { size: 12, bold: true }),
      ...entries,
      ...titleBlock(diagram, page, x, size.height - edge).shapes,
    ],
  };
}
