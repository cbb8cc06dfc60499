import { circle, path, rect, type Shape } from "../picture.js";
import { type Pen, reach, thin } from "./pen.js";

/**
 * Switching and protective devices after IEC 60617: a hinge, a blade, and at the fixed contact the mark that says what
 * the device may be relied on for. Drawn by ourselves.
 */
const hinge = -9;
const contact = 9;

function blade({ line, isClosed }: Pen): Shape[] {
  if (isClosed) return [line([-reach, 0], [reach, 0]), { ...line([hinge, 0], [contact, 0]), width: 2.4 }];
  return [line([-reach, 0], [hinge, 0], [contact - 1, -10]), line([contact, 0], [reach, 0])];
}

function cross({ line }: Pen): Shape[] {
  return [line([contact - 4, -4], [contact + 4, 4]), line([contact - 4, 4], [contact + 4, -4])];
}

/** Load breaking and isolating: a circle and a bar. */
export function isolator(pen: Pen): Shape[] {
  return [
    ...blade(pen),
    circle((contact - 2.6) * pen.mirror, 0, 2.4, { stroke: "ink", width: thin, fill: "paper" }),
    pen.line([contact, -5.5], [contact, 5.5]),
  ];
}

export function breaker(pen: Pen): Shape[] {
  return [...blade(pen), ...cross(pen)];
}

export function fuse({ line }: Pen): Shape[] {
  return [line([-reach, 0], [reach, 0]), line([-12, -4.5], [12, -4.5], [12, 4.5], [-12, 4.5], [-12, -4.5])];
}

/** The carrier drawn: its place, with nothing in it. */
export function drawnFuse({ line }: Pen): Shape[] {
  const place = { stroke: "ink", width: thin, dash: [3, 2.5] } as const;
  return [line([-reach, 0], [-12, 0]), line([12, 0], [reach, 0]), rect(-12, -4.5, 24, 9, place)];
}

/** The ring around the conductors, and its pull on the blade. */
function residual({ line, mirror, isClosed }: Pen): Shape[] {
  const x = 19 * mirror;
  return [
    path(`M${x - 3} 0A3 7 0 1 0 ${x + 3} 0A3 7 0 1 0 ${x - 3} 0`, { stroke: "ink", width: thin }),
    line([19, -7], [19, -12], [1, -12], [1, isClosed ? 0 : -6.5]),
  ];
}

export function rcd(pen: Pen): Shape[] {
  return [...blade(pen), ...residual(pen), pen.line([contact, -4.5], [contact, 4.5])];
}

export function rcbo(pen: Pen): Shape[] {
  return [...blade(pen), ...cross(pen), ...residual(pen)];
}
