import type { Current } from "./diagram.js";
import { path, polyline, type Shape } from "./picture.js";

/**
 * A conductor as a line. What flows in it is told without colour: d.c. is a double line (a pair of conductors), a.c. a
 * single one, an earth conductor dashes and dots; labels say so in words as well.
 */
export function conductor(
  current: Current,
  points: readonly { readonly x: number; readonly y: number }[],
  isThin = false,
): Shape[] {
  const d = polyline(points);
  if (current === "dc") return [path(d, { stroke: "dc", width: 4.4 }), path(d, { stroke: "paper", width: 1.8 })];
  if (current === "earth") return [path(d, { stroke: "earth", width: 1.6, dash: [9, 3, 2, 3] })];
  return [path(d, { stroke: "ac", width: isThin ? 1.2 : 1.8 })];
}
