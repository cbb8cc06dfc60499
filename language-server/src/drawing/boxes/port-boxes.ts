import type { Node, Port, Side } from "../diagram.js";
import { circle, type GroupShape, group, line, rect, type Shape, type TextShape } from "../picture.js";
import { rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { textWidth } from "../text-width.js";
import {
  type Area,
  type Box,
  even,
  factSize,
  lineHeight,
  lines,
  linesWidth,
  markStrip,
  type Point,
  smallestText,
} from "./box.js";

const pitch = 30;
const half = 18;
const style = { stroke: "ink", width: thin } as const;

/** An inverter: a frame with the converter's symbol between its ports. */
export function inverterBox(node: Node): Box {
  const labelWidth = linesWidth(node.label);
  const [west, east] = [on(node, "west"), on(node, "east")];
  const [westWidth, eastWidth] = [portsWidth(west), portsWidth(east)];
  const width = even(Math.max(labelWidth + 20, westWidth + eastWidth + 2 * half + 24));
  const top = markStrip + 6 + node.label.length * lineHeight;
  const rows = Math.max(west.length, east.length, 1);
  const inner = Math.max((rows - 1) * pitch, 2 * half - 16) + 36;
  const height = even(top + inner);
  const label = lines(node.label, width / 2, markStrip + 5, "middle");
  const middle = { x: (westWidth + width - eastWidth) / 2, y: top + inner / 2 };
  const shapes: Shape[] = [
    rect(0, markStrip, width, height - markStrip, { stroke: "ink", width: 1.5, fill: "panel", radius: 3 }),
    ...label.shapes,
    symbol("inverter", middle),
  ];
  const areas: Area[] = [
    label.area,
    { x: middle.x - half, y: middle.y - half, w: 2 * half, h: 2 * half, what: "inverter" },
  ];
  const ports = new Map<string, Point>();
  for (const list of [west, east])
    for (const [index, port] of list.entries()) {
      const y = even(top + 18 + (index + (rows - list.length) / 2) * pitch);
      ports.set(port.id, { x: port.side === "west" ? 0 : width, y });
      const words = portText(port, width, y);
      shapes.push(words.shape);
      areas.push(words.area);
    }
  return { width, height, ports, shapes, areas, corners: new Map([[node.id, { x: width - 10, y: markStrip / 2 }]]) };
}

function on(node: Node, side: Side): Port[] {
  return node.ports.filter((port) => port.side === side);
}

function portsWidth(ports: readonly Port[]): number {
  return Math.max(0, ...ports.map(({ label = "" }) => textWidth(label, factSize))) + 10;
}

function portText({ side, label = "" }: Port, width: number, y: number): { shape: TextShape; area: Area } {
  const x = side === "west" ? 5 : width - 5;
  const w = textWidth(label, factSize);
  return {
    shape: {
      is: "text",
      x,
      y: y + 3.5,
      text: label,
      size: factSize,
      anchor: side === "west" ? "start" : "end",
      fill: "ink",
    },
    area: { x: side === "west" ? x : x - w, y: y - 6, w, h: lineHeight, what: label },
  };
}

/**
 * A changeover switch: the pole is its `out`, and `grid` and `backup` are the contacts that it can lie on. Drawn on
 * the grid, with the other position in dots.
 */
export function changeoverBox(node: Node): Box {
  const [west, east] = [on(node, "west"), on(node, "east")];
  const width = even(Math.max(100, linesWidth(node.label) + 8));
  const rows = Math.max(west.length, east.length, 1);
  const top = markStrip + rise;
  const spread = (rows - 1) * pitch;
  const labelTop = top + spread + rise + 4;
  const label = lines(node.label, width / 2, labelTop, "middle");
  const ports = new Map<string, Point>();
  const shapes: Shape[] = [...label.shapes];
  const areas: Area[] = [label.area, { x: width / 2 - 14, y: top - 8, w: 28, h: spread + 16, what: "changeover" }];
  const pole = node.ports.find((port) => port.label === "out");
  const contacts: (Point & { readonly name: string })[] = [];
  let pivot: Point | undefined;
  for (const list of [west, east])
    for (const [index, port] of list.entries()) {
      const y = even(top + (index + (rows - list.length) / 2) * pitch);
      const x = port.side === "west" ? 0 : width;
      const isPole = port === pole;
      // A contact on the pole's own side stands over the pole, any other one across from it.
      const end = isPole || port.side === pole?.side ? middleOf(width, pole, 8) : middleOf(width, pole, -12);
      ports.set(port.id, { x, y });
      shapes.push(line(x, y, end, y, style));
      if (isPole) pivot = { x: end, y };
      else contacts.push({ x: end, y, name: port.label ?? "" });
      const { label: name = "" } = port;
      const w = textWidth(name, smallestText);
      const at = port.side === "west" ? 2 : width - 2;
      const anchor = port.side === "west" ? "start" : "end";
      shapes.push({ is: "text", x: at, y: y - 4, text: name, size: smallestText, anchor, fill: "ink" });
      areas.push({ x: port.side === "west" ? at : at - w, y: y - 12, w, h: 10, what: name });
    }
  for (const { x, y } of contacts) shapes.push(circle(x, y, 2, { fill: "ink" }));
  if (pivot) shapes.push(blade(pivot, contacts, { x: width / 2 - 14, y: top - 8, w: 28, h: spread + 16 }));
  return {
    width,
    height: even(labelTop + node.label.length * lineHeight + 2),
    ports,
    shapes,
    areas,
    corners: new Map([[node.id, { x: width - 10, y: markStrip / 2 }]]),
  };
}

/** On one contact, with the other positions in dots; open, it lies on none. */
function blade(
  pivot: Point,
  contacts: readonly (Point & { readonly name: string })[],
  extent: GroupShape["extent"],
): Shape {
  const on = (lies: string): Shape[] => [
    ...contacts.map(({ x, y, name }) =>
      line(pivot.x, pivot.y, x, y, name === lies ? { ...style, width: 1.8 } : { ...style, dash: [1.5, 3] }),
    ),
    circle(pivot.x, pivot.y, 2.4, { ...style, fill: "paper" }),
  ];
  const poses = { open: on(""), grid: on("grid"), backup: on("backup") };
  return group(poses.grid, { sort: "symbol", extent, poses });
}

/** So far from the middle towards the pole's side. */
function middleOf(width: number, pole: Port | undefined, offset: number): number {
  return width / 2 + (pole?.side === "east" ? offset : -offset);
}

/** A terminal block: a bar that conductors land on from both sides. */
export function blockBox(node: Node): Box {
  const width = even(Math.max(16, linesWidth(node.label)) + 8);
  const axis = markStrip + rise;
  const labelTop = axis + rise + 4;
  const label = lines(node.label, width / 2, labelTop, "middle");
  const ports = new Map<string, Point>();
  const shapes: Shape[] = [
    rect(width / 2 - 3, axis - rise, 6, 2 * rise, { stroke: "ink", width: thin, fill: "ink" }),
    ...label.shapes,
  ];
  for (const side of ["west", "east"] as const)
    for (const [index, port] of on(node, side).entries()) {
      const y = axis + (index === 0 ? 0 : index % 2 === 1 ? 8 : -8);
      const x = side === "west" ? 0 : width;
      ports.set(port.id, { x, y });
      shapes.push(line(x, y, width / 2, y, style));
    }
  return {
    width,
    height: even(labelTop + node.label.length * lineHeight + 2),
    ports,
    shapes,
    areas: [{ x: width / 2 - 3, y: axis - rise, w: 6, h: 2 * rise, what: "terminal block" }, label.area],
    corners: new Map([[node.id, { x: width / 2 + 8, y: markStrip / 2 }]]),
  };
}
