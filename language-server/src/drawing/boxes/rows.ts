import type { Row } from "../diagram.js";
import { group, line, path, type Shape } from "../picture.js";
import { reach, rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { textWidth } from "../text-width.js";
import { type Area, even, factSize, lines, linesWidth, markStrip, nameSize, type Point } from "./box.js";

/** Ways on a bar: each a line with its device next to the bar and its words along the line. */
export const rowPitch = 38;

/** How wide the line with the words is. */
export function wordsWidth(rows: readonly Row[]): number {
  let widest = 60;
  for (const row of rows) {
    const [above, below] = rowWords(row);
    widest = Math.max(widest, linesWidth([above]) + 30, textWidth(below, factSize) + (row.port ? 8 : 18));
  }
  return even(widest);
}

/** Above the line which way and device it is; below it the rating, and what it serves. */
function rowWords({ way, device, serves, port }: Row): readonly [string, string] {
  const [name = "", ...facts] = device.label;
  const above = way === undefined ? name : `${way} · ${name}`;
  const served = serves === undefined ? "" : port ? "" : serves;
  return [above, [facts.join(" "), served].filter((word) => word !== "").join(" · ")];
}

export interface RowDrawing {
  readonly shapes: readonly Shape[];
  readonly areas: readonly Area[];
  readonly corner: Point;
}

/**
 * One way from the outer edge at `outer` to the bar at `bar`; the device sits at the bar's end. `bar` may lie on
 * either side of `outer`.
 */
export function rowDrawing(row: Row, outer: number, bar: number, inner: number, axis: number): RowDrawing {
  const direction = bar > outer ? 1 : -1;
  const middle = inner - direction * reach;
  const style = { stroke: "ink", width: thin } as const;
  const [above, below] = rowWords(row);
  const isLeaf = row.device.symbol === "spd";
  const end = outer + direction * (row.port ? 0 : 12);
  const anchor = direction === 1 ? "start" : "end";
  const textX = outer + direction * 6;
  const upper = lines([above], textX, axis - nameSize - 4, anchor);
  const lower = lines([below], textX + (row.port ? 0 : direction * 8), axis + 2, anchor, false);
  const shapes: Shape[] = [
    ...(isLeaf ? [] : [line(end, axis, middle - direction * reach, axis, style)]),
    ...(row.port || isLeaf ? [] : [arrow(end, axis, -direction)]),
    line(inner, axis, bar, axis, style),
    symbol(row.device.symbol, { x: middle, y: axis }, isLeaf ? (direction === 1 ? -1 : 1) : direction),
    ...upper.shapes,
    ...(below === "" ? [] : lower.shapes),
  ];
  const areas = [
    { x: middle - reach, y: axis - rise, w: 2 * reach, h: 2 * rise, what: row.device.symbol },
    upper.area,
    ...(below === "" ? [] : [lower.area]),
  ];
  const about = { id: row.device.id, sort: "device", label: described(row) };
  const corner = { x: upper.area.x + (direction === 1 ? upper.area.w + 13 : -13), y: axis - markStrip / 2 - 3 };
  return { shapes: [group(shapes, about)], areas, corner };
}

function described({ device, way, serves }: Row): string {
  const where = way === undefined ? "" : `way ${way}, `;
  return `${where}${device.description}${serves === undefined ? "" : `, serves ${serves}`}`;
}

/** Goes on to something that is not drawn. */
function arrow(x: number, y: number, direction: number): Shape {
  return path(`M${x} ${y - 3.5}L${x + direction * 7} ${y}L${x} ${y + 3.5}Z`, { fill: "ink" });
}
