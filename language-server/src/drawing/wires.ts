import { lineHeight, type Point } from "./boxes/box.js";
import { conductor } from "./conductor.js";
import type { Current } from "./diagram.js";
import type { PlacedWire } from "./layout.js";
import { circle, group, type Shape } from "./picture.js";
import { wireTextSize } from "./placing/label-size.js";
import { liveStrokes } from "./states.js";

/** A run as it is drawn, with dots where it meets others and its label above the line. */
export function wireShapes({ wire, points, junctions, label }: PlacedWire, isLive = false): Shape {
  const shapes: Shape[] = [
    ...(isLive ? liveStrokes(points) : []),
    ...conductor(wire.current, points, !wire.isRun),
    ...junctions.map((at) => dot(at, wire.current)),
  ];
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

function dot({ x, y }: Point, current: Exclude<Current, "both">): Shape {
  return circle(x, y, 3.2, { fill: current });
}
