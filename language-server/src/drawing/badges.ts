import { type Point, smallestText } from "./boxes/box.js";
import type { Mark } from "./diagram.js";
import type { Placed } from "./layout.js";
import { group, path, type Shape, text } from "./picture.js";

/** The number of a finding: an error is a diamond, a warning a square, a note a disc, a departure a ring. */
export function badge(mark: Mark, x: number, y: number): Shape {
  const paint = mark.departed ? "note" : mark.severity;
  return group(
    [
      outline(mark, x, y),
      text(x, y + 3.4, String(mark.number), {
        size: smallestText,
        bold: true,
        anchor: "middle",
        fill: mark.departed ? paint : "paper",
      }),
    ],
    { sort: `mark ${mark.severity}` },
  );
}

/** Severity is told by shape as well as by colour; from a hundred on the shapes are wider. */
function outline({ number, severity, departed }: Mark, x: number, y: number): Shape {
  const half = number > 99 ? 10.5 : 7.5;
  const round = { x: x - half, y: y - 7.5, w: 2 * half, h: 15, radius: 7.5 };
  if (departed) return { is: "rect", ...round, stroke: "note", width: 1.3, fill: "paper" };
  if (severity === "error") {
    const reach = half + 2.5;
    return path(`M${x - reach} ${y}L${x} ${y - 10}L${x + reach} ${y}L${x} ${y + 10}Z`, { fill: "error" });
  }
  return { is: "rect", ...round, radius: severity === "warning" ? 0 : 7.5, fill: severity };
}

const spacing = 17;
const wideSpacing = 23;
/** So many stand beside each other; the rest are in the legend. */
const most = 4;

export interface PlacedMark extends Point {
  readonly mark: Mark;
}

/** Each mark beside what it is about, the worst on the left. */
export function placeMarks(placed: Placed): PlacedMark[] {
  const corners = new Map<string, Point & { readonly direction: 1 | -1 }>();
  for (const { box, x, y } of placed.nodes)
    for (const [id, corner] of box.corners) corners.set(id, { x: x + corner.x, y: y + corner.y, direction: -1 });
  for (const { wire, label, points } of placed.wires) {
    const [first] = points;
    if (label) corners.set(wire.id, { x: label.x + label.w - 6, y: label.y - 8, direction: -1 });
    else if (first) corners.set(wire.id, { ...first, direction: 1 });
  }
  const byThing = new Map<string, Mark[]>();
  for (const mark of placed.diagram.marks)
    if (mark.at !== undefined) byThing.set(mark.at, [...(byThing.get(mark.at) ?? []), mark]);
  return [...byThing].flatMap(([id, marks]) => {
    const corner = corners.get(id);
    if (!corner) return [];
    const shown = marks.slice(0, most);
    const step = shown.some(({ number }) => number > 99) ? wideSpacing : spacing;
    const start = corner.direction === 1 ? corner.x : corner.x - (shown.length - 1) * step;
    return shown.map((mark, index): PlacedMark => ({ mark, x: start + index * step, y: corner.y }));
  });
}
