import type { Point } from "../boxes/box.js";
import type { PlacedWire } from "../layout.js";

export function moved({ points, junctions, label, ...rest }: PlacedWire, { x, y }: Point): PlacedWire {
  const move = (at: Point): Point => ({ x: at.x + x, y: at.y + y });
  return {
    ...rest,
    points: points.map(move),
    junctions: junctions.map(move),
    ...(label && { label: { ...label, ...move(label) } }),
  };
}
