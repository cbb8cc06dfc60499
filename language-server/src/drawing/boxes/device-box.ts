import { conductor } from "../conductor.js";
import type { Node, Port } from "../diagram.js";
import type { Shape } from "../picture.js";
import { reach, rise } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { wrapText } from "../text-width.js";
import { type Box, even, factSize, lineHeight, lines, linesWidth, markStrip, type Point } from "./box.js";

/** The label of the only wire of a thing, where it is written along the thing's own lead: short tees stay short. */
export interface LeadLabel {
  readonly w: number;
  readonly h: number;
}

/** A symbol on its line, with its label below. */
export function deviceBox(node: Node, lead?: LeadLabel): Box {
  const rows = Math.max(
    ...(["west", "east"] as const).map((side) => node.ports.filter((port) => port.side === side).length),
    1,
  );
  const spread = (rows - 1) * portPitch;
  const words = narrow(node.label);
  const wordsWidth = Math.max(2 * reach, linesWidth(words)) + 8;
  const width = even(Math.max(wordsWidth, lead ? lead.w + 2 * reach : 0));
  const axis = Math.max(markStrip + rise, lead ? lead.h + 4 : 0);
  const labelTop = axis + rise + 4 + spread;
  const mirror = node.ports.some(({ side }) => side === "west") || node.ports.length === 0 ? 1 : -1;
  const middle = { x: lead ? (mirror === 1 ? width - reach : reach) : width / 2, y: axis };
  const label = lead
    ? lines(words, mirror === 1 ? width - 2 : 2, labelTop, mirror === 1 ? "end" : "start")
    : lines(words, middle.x, labelTop, "middle");
  const ports = new Map(node.ports.map((port): [string, Point] => [port.id, portPoint(port, node.ports, width, axis)]));
  return {
    width,
    height: even(labelTop + words.length * lineHeight + 2),
    ports,
    shapes: [...leads(node, ports, middle), symbol(node.symbol, middle, mirror), ...label.shapes],
    areas: [{ x: middle.x - reach, y: axis - rise, w: 2 * reach, h: 2 * rise, what: node.symbol }, label.area],
    corners: new Map([[node.id, { x: middle.x + reach - 8, y: axis - rise - markStrip / 2 }]]),
    ...(lead && { leadLabel: { x: mirror === 1 ? 0 : width - lead.w, y: axis - lead.h - 2 } }),
  };
}

/** Labels stand below their symbols; broken into short lines they leave the drawing narrow. */
function narrow(label: readonly string[]): string[] {
  const [name = "", ...facts] = label;
  return [name, ...facts.flatMap((fact) => wrapText(fact, factSize, labelWidth))];
}
const labelWidth = 84;

const portPitch = 14;

function portPoint(port: Port, all: readonly Port[], width: number, axis: number): Point {
  const index = all.filter(({ side }) => side === port.side).indexOf(port);
  return { x: port.side === "west" ? 0 : width, y: axis + index * portPitch };
}

/** From the box's edge to the symbol's own leads. */
function leads(node: Node, ports: ReadonlyMap<string, Point>, middle: Point): Shape[] {
  return node.ports.flatMap((port): Shape[] => {
    const at = ports.get(port.id)!;
    const { current = node.current } = port;
    const end = port.side === "west" ? middle.x - reach : middle.x + reach;
    if (at.y === middle.y) return at.x === end ? [] : conductor(current, [at, { x: end, y: at.y }]);
    return conductor(current, [at, { x: end, y: at.y }, { x: end, y: middle.y }]);
  });
}
