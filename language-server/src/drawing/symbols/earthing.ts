import { circle, rect, type Shape } from "../picture.js";
import { type Pen, reach, thin } from "./pen.js";

/** Surge protection and earth, after IEC 60617. */

function bars({ line }: Pen, x: number): Shape[] {
  return [line([x, -8], [x, 8]), line([x + 3.5, -5], [x + 3.5, 5]), line([x + 7, -2], [x + 7, 2])];
}

/** A surge arrester: the arrow that jumps the gap, and its way to earth. */
export function spd(pen: Pen): Shape[] {
  const { line, solid, mirror } = pen;
  return [
    rect(mirror === 1 ? -15 : -7, -8, 22, 16, { stroke: "ink", width: thin, fill: "paper" }),
    line([-reach, 0], [-6, 0]),
    solid([-6, -3.5], [1, 0], [-6, 3.5]),
    line([3, -4], [3, 4]),
    line([3, 0], [15, 0]),
    ...bars(pen, 15),
  ];
}

export function earth(pen: Pen): Shape[] {
  return [pen.line([-reach, 0], [4, 0]), ...bars(pen, 4)];
}

/** Earth by an electrode of the installation's own: the bars within a ring. */
export function electrode(pen: Pen): Shape[] {
  return [
    circle(6 * pen.mirror, 0, 12, { stroke: "ink", width: thin }),
    pen.line([-reach, 0], [2, 0]),
    ...bars(pen, 2),
  ];
}
