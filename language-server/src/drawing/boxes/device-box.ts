import type { Node, Port } from "../diagram.js";
import { group, line, type Shape } from "../picture.js";
import { reach, rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { type Box, even, lineHeight, lines, linesWidth, markStrip, type Point } from "./box.js";

/** A symbol on its line, with its label below. */
export function deviceBox(node: Node): Box {
  const rows = Math.max(...(["west", "east"] as const).map((side) => node.ports.filter((port) => port.side === side).length), 1);
  const spread = (rows - 1) * portPitch;
  const width = even(Math.max(2 * reach, linesWidth(node.label)) + 8);
  const axis = markStrip + rise;
  const labelTop = axis + rise + 4 + spread;
  const label = lines(node.label, width / 2, labelTop, "middle");
  const mirror = node.ports.some(({ side }) => side === "west") || node.ports.length === 0 ? 1 : -1;
  const middle = { x: width / 2, y: axis };
  const ports = new Map(node.ports.map((port): [string, Point] => [port.id, portPoint(port, node.ports, width, axis)]));
  return {
    width,
    height: even(labelTop + node.label.length * lineHeight + 2),
    ports,
    shapes: [...leads(node, ports, middle), group(symbol(node.symbol, mirror), middle), ...label.shapes],
    areas: [{ x: middle.x - reach, y: axis - rise, w: 2 * reach, h: 2 * rise, what: node.symbol }, label.area],
    corners: new Map([[node.id, { x: middle.x + reach - 4, y: markStrip / 2 }]]),
  };
}

export const portPitch = 14;

function portPoint(port: Port, all: readonly Port[], width: number, axis: number): Point {
  const index = all.filter(({ side }) => side === port.side).indexOf(port);
  return { x: port.side === "west" ? 0 : width, y: axis + index * portPitch };
}

/** From the box's edge to the symbol's own leads. */
function leads(node: Node, ports: ReadonlyMap<string, Point>, middle: Point): Shape[] {
  return node.ports.flatMap((port): Shape[] => {
    const at = ports.get(port.id)!;
    const end = port.side === "west" ? middle.x - reach : middle.x + reach;
    const style = { stroke: "ink", width: thin } as const;
    if (at.y === middle.y) return at.x === end ? [] : [line(at.x, at.y, end, middle.y, style)];
    return [line(at.x, at.y, end, at.y, style), line(end, at.y, end, middle.y, style)];
  });
}
