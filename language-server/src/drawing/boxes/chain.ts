import type { Device } from "../diagram.js";
import { group, line, type Shape } from "../picture.js";
import { reach, rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { type Area, even, lineHeight, lines, linesWidth, markStrip, type Point } from "./box.js";

/** Devices drawn one behind the other on a line: the main switches of a board, what is built into a battery. */
export interface Chain {
  readonly shapes: readonly Shape[];
  readonly areas: readonly Area[];
  readonly corners: readonly (readonly [string, Point])[];
  readonly width: number;
}

export function chain(devices: readonly Device[], x: number, axis: number): Chain {
  const shapes: Shape[] = [];
  const areas: Area[] = [];
  const corners: [string, Point][] = [];
  let left = x;
  for (const device of devices) {
    const width = even(Math.max(2 * reach, linesWidth(device.label)) + 10);
    const middle = left + width / 2;
    const label = lines(device.label, middle, axis + rise + 2, "middle");
    shapes.push(
      group(
        [
          line(left, axis, middle - reach, axis, { stroke: "ink", width: thin }),
          line(middle + reach, axis, left + width, axis, { stroke: "ink", width: thin }),
          symbol(device.symbol, { x: middle, y: axis }),
          ...label.shapes,
        ],
        { id: device.id, sort: "device", label: device.description },
      ),
    );
    areas.push({ x: middle - reach, y: axis - rise, w: 2 * reach, h: 2 * rise, what: device.symbol }, label.area);
    corners.push([device.id, { x: middle + reach - 6, y: axis - rise - markStrip / 2 + 2 }]);
    left += width;
  }
  return { shapes, areas, corners, width: left - x };
}

/** How far the labels of a chain reach below its line. */
export function chainBelow(devices: readonly Device[]): number {
  return rise + 4 + Math.max(0, ...devices.map(({ label }) => label.length)) * lineHeight;
}
