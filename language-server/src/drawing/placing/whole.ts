import type { Point } from "../boxes/box.js";

/** Half units: the same on every machine, and lines stay level. */
export function whole(value = 0): number {
  return Math.round(value * 2) / 2;
}

export function wholePoint({ x, y }: Point): Point {
  return { x: whole(x), y: whole(y) };
}
