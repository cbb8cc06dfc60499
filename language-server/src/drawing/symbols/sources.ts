import { circle, path, rect, type Shape, text } from "../picture.js";
import { type Pen, reach, thin } from "./pen.js";

/** Where energy comes from and goes to, after IEC 60617. */
const outline = { stroke: "ink", width: thin, fill: "paper" } as const;

/** A PV generator: a rectangle with the triangle of light in it. */
export function array({ line, mirror }: Pen): Shape[] {
  return [
    rect(mirror === 1 ? -12 : -20, -13, 32, 26, outline),
    line([-reach, 0], [-12, 0]),
    line([20, -13], [4, 0], [20, 13]),
  ];
}

export function battery({ line, solid }: Pen): Shape[] {
  const plates: Shape[] = [line([-reach, 0], [-10, 0])];
  for (const x of [-10, 4]) {
    plates.push(line([x, -11], [x, 11]), solid([x + 5, -5.5], [x + 7, -5.5], [x + 7, 5.5], [x + 5, 5.5]));
  }
  plates.push(line([1, 0], [4, 0]));
  return plates;
}

export function supply({ line, mirror }: Pen): Shape[] {
  return [line([-reach, 0], [-13, 0]), circle(0, 0, 13, outline), sine(0, 0, mirror * 7)];
}

export function generator({ line }: Pen): Shape[] {
  return [
    line([-reach, 0], [-13, 0]),
    circle(0, 0, 13, outline),
    text(0, 0.5, "G", { size: 11, anchor: "middle", bold: true }),
    sine(0, 6, 5),
  ];
}

/** Something that takes power: an outlet with its arrow. */
export function load({ line, solid, mirror }: Pen): Shape[] {
  return [
    line([-reach, 0], [-4, 0]),
    solid([-4, -4], [4, 0], [-4, 4]),
    rect(mirror === 1 ? 4 : -20, -9, 16, 18, outline),
  ];
}

export function inverter(): Shape[] {
  return [
    rect(-18, -18, 36, 36, outline),
    path("M-18 18L18 -18", { stroke: "ink", width: thin }),
    path("M-14 -11L-3 -11M-14 -7.5L-11.5 -7.5M-9.7 -7.5L-7.3 -7.5M-5.5 -7.5L-3 -7.5", { stroke: "ink", width: thin }),
    sine(8, 9, 6),
  ];
}

export function meter({ line }: Pen): Shape[] {
  return [
    line([-reach, 0], [-15, 0]),
    line([15, 0], [reach, 0]),
    rect(-15, -13, 30, 26, outline),
    path("M-15 -7L15 -7", { stroke: "ink", width: thin }),
    text(0, 6.5, "kWh", { size: 10, anchor: "middle" }),
  ];
}

/** One wave. */
function sine(x: number, y: number, half: number): Shape {
  const quarter = half / 2;
  return path(
    `M${x - half} ${y}C${x - quarter} ${y - half} ${x - quarter} ${y - half} ${x} ${y}C${x + quarter} ${y + half} ${x + quarter} ${y + half} ${x + half} ${y}`,
    { stroke: "ink", width: thin },
  );
}
