import type { Point } from "./boxes/box.js";
import type { Mark } from "./diagram.js";
import type { Placed } from "./layout.js";
import { circle, group, path, type Shape, text } from "./picture.js";

/** The number of a finding: an error is a diamond, a warning a square, a note a disc, a departure a ring. */
export function badge(mark: Mark, x: number, y: number): Shape {
  const paint = mark.departed ? "note" : mark.severity;
  return group(
    [
      outline(mark, x, y),
      text(x, y + 3.2, String(mark.number), {
        size: mark.number > 99 ? 7 : 9,
        bold: true,
        anchor: "middle",
        fill: mark.departed ? paint : "paper",
      }),
    ],
    { sort: `mark ${mark.severity}` },
  );
}

/** Severity is told by shape as well as by colour. */
function outline({ severity, departed }: Mark, x: number, y: number): Shape {
  if (departed) return circle(x, y, 7.2, { stroke: "note", width: 1.3, fill: "paper" });
  if (severity === "error")
    return path(`M${x} ${y - 9.5}L${x + 9.5} ${y}L${x} ${y + 9.5}L${x - 9.5} ${y}Z`, { fill: "error" });
  if (severity === "warning")
    return path(`M${x - 7.5} ${y - 7.5}L${x + 7.5} ${y - 7.5}L${x + 7.5} ${y + 7.5}L${x - 7.5} ${y + 7.5}Z`, {
      fill: "warning",
    });
  return circle(x, y, 7.5, { fill: "note" });
}

const spacing = 17;
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
    const start = corner.direction === 1 ? corner.x : corner.x - (shown.length - 1) * spacing;
    return shown.map((mark, index): PlacedMark => ({ mark, x: start + index * spacing, y: corner.y }));
  });
}
