import { type GroupShape, group, line } from "../picture.js";

/** A bar of a board or a box, drawn upright. */
export function upright(x: number, from: number, to: number, width = 4): GroupShape {
  const extent = { x: x - 6, y: from, w: 12, h: to - from };
  return group([line(x, from, x, to, { stroke: "ink", width })], { sort: "bar", extent });
}
