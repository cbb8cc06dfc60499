import type { BoxInside, Node } from "../diagram.js";
import { line, rect, type Shape } from "../picture.js";
import { reach, rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { upright } from "./bar.js";
import { type Area, type Box, even, lineHeight, lines, linesWidth, markStrip, type Point } from "./box.js";
import { chain, chainBelow } from "./chain.js";
import { rowDrawing, rowPitch, wordsWidth } from "./rows.js";

const style = { stroke: "ink", width: thin } as const;
const frame = { stroke: "ink", width: 1.2, dash: [9, 3, 2, 3], fill: "panel", radius: 3 } as const;

/** A combiner box: strings from the left through their fuses onto a bar, the array cable to the right. */
export function combinerBox(node: Node, { rows }: BoxInside): Box {
  const wordsW = wordsWidth(rows);
  const inner = wordsW + 2 * reach;
  const bar = inner + 14;
  const width = even(Math.max(bar + 30, linesWidth(node.label) + 24));
  const head = lines(node.label, 10, markStrip + 5, "start");
  const first = even(markStrip + 5 + node.label.length * lineHeight + rise + 14);
  const shapes: Shape[] = [...head.shapes];
  const areas: Area[] = [head.area];
  const corners = new Map<string, Point>([[node.id, { x: width - 10, y: markStrip / 2 }]]);
  const ports = new Map<string, Point>();
  let axis = first;
  for (const row of rows) {
    const drawing = rowDrawing(row, 0, bar, inner, axis);
    shapes.push(...drawing.shapes);
    areas.push(...drawing.areas);
    corners.set(row.device.id, drawing.corner);
    if (row.port) ports.set(row.port, { x: 0, y: axis });
    axis += rowPitch;
  }
  for (const { id, side } of node.ports) {
    if (ports.has(id) || side !== "west") continue;
    ports.set(id, { x: 0, y: axis });
    shapes.push(line(0, axis, bar, axis, style));
    axis += rowPitch;
  }
  const last = Math.max(axis - rowPitch, first);
  const out = even((first + last) / 2);
  for (const { id, side } of node.ports) if (side === "east") ports.set(id, { x: width, y: out });
  shapes.push(upright(bar, first - 12, last + 12), line(bar, out, width, out, style));
  const height = even(last + rise + 10);
  return {
    width,
    height,
    ports,
    shapes: [rect(0, markStrip, width, height - markStrip, frame), ...shapes],
    areas,
    corners,
  };
}

/** A battery with devices of its own between its cells and its terminals. */
export function batteryBox(node: Node, { chain: devices }: BoxInside): Box {
  const head = lines(node.label, 10, markStrip + 5, "start");
  const axis = even(markStrip + 5 + node.label.length * lineHeight + rise + 10);
  const cells = 2 * reach + 12;
  const inside = chain(devices, cells, axis);
  const width = even(Math.max(cells + inside.width + 8, linesWidth(node.label) + 24));
  const middle = { x: reach + 10, y: axis };
  const shapes: Shape[] = [
    ...head.shapes,
    symbol("battery", middle, -1),
    line(middle.x + reach, axis, cells, axis, style),
    ...inside.shapes,
    line(cells + inside.width, axis, width, axis, style),
  ];
  const height = even(axis + chainBelow(devices) + 6);
  const corners = new Map<string, Point>([[node.id, { x: width - 10, y: markStrip / 2 }], ...inside.corners]);
  return {
    width,
    height,
    ports: new Map(node.ports.map(({ id }, index) => [id, { x: width, y: axis + 14 * index }])),
    shapes: [rect(0, markStrip, width, height - markStrip, frame), ...shapes],
    areas: [
      head.area,
      { x: middle.x - reach, y: axis - rise, w: 2 * reach, h: 2 * rise, what: "battery" },
      ...inside.areas,
    ],
    corners,
  };
}
