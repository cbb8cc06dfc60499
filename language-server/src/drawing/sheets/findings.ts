import { badge } from "../badges.js";
import type { Diagram, Mark } from "../diagram.js";
import { group, type Shape, text } from "../picture.js";
import { wrapText } from "../text-width.js";
import { type Column, columnWidth, type Page, pad, pitch, size } from "./columns.js";

/** Findings below each other from `y` on, in as many columns as are given; `x` is the left edge. */
export function findingsColumns({ marks }: Diagram, page: Page, x: number, y: number, columns = 1): Column {
  const heading = text(x + pad, y + 12, "Findings", { size: 12, bold: true });
  if (page.findings !== undefined || marks.length === 0) {
    const none = page.of > 1 ? "None on this sheet." : "None among what could be checked.";
    return { shapes: [heading, text(x + pad, y + 33, page.findings ?? none, { size, fill: "faint" })], height: 44 };
  }
  const entries = marks.map(entryOf);
  const whole = entries.reduce((sum, { height }) => sum + height, 0);
  const shapes: Shape[] = [heading];
  let [column, filled, highest] = [0, 0, 0];
  for (const { shapes: own, height } of entries) {
    if (filled > 0 && filled + height / 2 > whole / columns && column < columns - 1) {
      column++;
      filled = 0;
    }
    shapes.push(group(own, { x: x + column * columnWidth, y: y + 24 + filled }));
    filled += height;
    highest = Math.max(highest, filled);
  }
  return { shapes, height: 24 + highest };
}

/** One finding with its number, from its own upper left corner. */
export function entryOf(mark: Mark): Column {
  const words = wrapText(mark.text, size, columnWidth - 2 * pad - 26);
  const shapes: Shape[] = [
    badge(mark, pad + 8, 7),
    text(pad + 26, 10, titleOf(mark), { size, bold: true, fill: paintOf(mark) }),
    ...words.map((each, index) => text(pad + 26, 10 + (index + 1) * pitch, each, { size })),
  ];
  const about = {
    ...(mark.at !== undefined && { id: mark.at }),
    sort: `finding ${mark.severity}`,
    label: spoken(mark),
  };
  return { shapes: [group(shapes, about)], height: (words.length + 1) * pitch + 7 };
}
function titleOf({ severity, rule, at, departed }: Mark): string {
  return `${departed ? "departure" : severity}: ${rule}${at === undefined ? "" : ` on ${at}`}`;
}

function spoken(mark: Mark): string {
  return `${mark.number}, ${titleOf(mark)}: ${mark.text}`;
}

function paintOf({ severity, departed }: Mark): "note" | "error" | "warning" {
  return departed ? "note" : severity;
}
