import type { Node } from "../diagram.js";
import { path, type Shape } from "../picture.js";
import { thin } from "../symbols/pen.js";
import { type Box, even, factSize, lineHeight, lines, linesWidth, type Point } from "./box.js";

const flag = { w: 66, h: 18, tip: 8 } as const;

/**
 * Where a wire leaves a part of the drawing: a flag with the sheet it goes on to, and below it the terminal. Without
 * words it only keeps the place free.
 */
export function continuationBox(node: Node): Box {
  const [port] = node.ports;
  const toTheRight = port?.side === "west";
  const [sheet, ...to] = node.label;
  const width = sheet === undefined ? 8 : even(Math.max(flag.w, linesWidth(to, false)) + 4);
  const axis = sheet === undefined ? 4 : flag.h / 2 + 2;
  const ports = new Map<string, Point>(port && [[port.id, { x: toTheRight ? 0 : width, y: axis }]]);
  if (sheet === undefined) return { width, height: 8, ports, shapes: [], areas: [], corners: new Map() };
  const x = (value: number): number => (toTheRight ? value : width - value);
  const [top, bottom] = [axis - flag.h / 2, axis + flag.h / 2];
  const outline = `M${x(0)} ${top}L${x(flag.w - flag.tip)} ${top}L${x(flag.w)} ${axis}L${x(flag.w - flag.tip)} ${bottom}L${x(0)} ${bottom}Z`;
  const words = lines(to, x(0), bottom + 2, toTheRight ? "start" : "end", false);
  const middle = x((flag.w - flag.tip) / 2);
  const shapes: Shape[] = [
    path(outline, { stroke: "ink", width: thin, fill: "paper" }),
    { is: "text", x: middle, y: axis + 3.5, text: sheet, size: factSize, bold: true, anchor: "middle", fill: "ink" },
    ...words.shapes,
  ];
  const left = toTheRight ? 0 : width - flag.w;
  return {
    width,
    height: even(bottom + 2 + to.length * lineHeight + 2),
    ports,
    shapes,
    areas: [{ x: left, y: top, w: flag.w, h: flag.h, what: sheet }, words.area],
    corners: new Map(),
  };
}
