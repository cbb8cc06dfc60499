import { lineHeight, type Point } from "./boxes/box.js";
import type { Current } from "./diagram.js";
import type { PlacedWire } from "./layout.js";
import { wireTextSize } from "./layout.js";
import { circle, group, path, polyline, type Shape } from "./picture.js";

/**
 * A run as it is drawn. What flows in it is told without colour: d.c. is a double line (a pair of conductors), a.c. a
 * single one, an earth conductor dashes and dots; the label says so in words as well.
 */
export function wireShapes({ wire, points, junctions, label }: PlacedWire): Shape {
  const shapes: Shape[] = [...lineShapes(wire.current, points, wire.isRun), ...junctions.map((at) => dot(at, wire.current))];
  if (label) {
    for (const [index, words] of wire.label.entries())
      shapes.push({
        is: "text",
        x: label.x + label.w / 2,
        y: label.y + 9.5 + index * (lineHeight - 0.5),
        text: words,
        size: wireTextSize,
        bold: index === 0,
        anchor: "middle",
        fill: wire.current,
      });
  }
  return group(shapes, { id: wire.id, sort: wire.isRun ? "run" : "feed", label: wire.description });
}

export function lineShapes(current: Exclude<Current, "both">, points: readonly Point[], isRun = true): Shape[] {
  const d = polyline(points);
  if (current === "dc")
    return [path(d, { stroke: "dc", width: 4.4 }), path(d, { stroke: "paper", width: 1.8 })];
  if (current === "earth") return [path(d, { stroke: "earth", width: 1.6, dash: [9, 3, 2, 3] })];
  return [path(d, { stroke: "ac", width: isRun ? 1.8 : 1.2 })];
}

function dot({ x, y }: Point, current: Exclude<Current, "both">): Shape {
  return circle(x, y, 3.2, { fill: current });
}
