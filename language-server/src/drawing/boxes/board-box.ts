import type { BoardInside, Node, Section } from "../diagram.js";
import { group, line, rect, type Shape } from "../picture.js";
import { reach, rise, thin } from "../symbols/pen.js";
import { symbol } from "../symbols/symbols.js";
import { upright } from "./bar.js";
import { type Area, type Box, even, lineHeight, lines, linesWidth, markStrip, type Point } from "./box.js";
import { chain, chainBelow } from "./chain.js";
import { rowDrawing, rowPitch, wordsWidth } from "./rows.js";

const style = { stroke: "ink", width: thin } as const;
const frame = { stroke: "ink", width: 1.2, dash: [9, 3, 2, 3], fill: "panel", radius: 3 } as const;

/**
 * A board: its incoming line with the main switch, the bar, and the ways in the order of the text. Drawn with the
 * supply on the right; a board that a backup port feeds is drawn the other way round.
 */
export function boardBox(node: Node, inside: BoardInside): Box {
  const isMirrored = node.ports.some(({ id, side }) => id === inside.incoming && side === "west");
  const rows = inside.sections.flatMap((section) => section.rows);
  const wordsW = wordsWidth(rows);
  const rcdW = rcdColumn(inside.sections);
  const inOrder = isMirrored ? inside.mains : inside.mains.toReversed();
  const mains = chain(inOrder, 0, 0);
  const headTop = markStrip + 5;
  const top = headTop + node.label.length * lineHeight + 10;
  const firstAxis = even(top + rise + 6);

  // From the outer edge of the ways to the incoming edge, as if the supply were on the right.
  const inner = wordsW + 2 * reach;
  const section = inner + 12;
  const mainBar = section + (rcdW > 0 ? rcdW + 14 : 0);
  const width = even(Math.max(mainBar + 16 + Math.max(mains.width, 24), linesWidth(node.label) + 24));
  const x = (value: number): number => (isMirrored ? width - value : value);

  const shapes: Shape[] = [];
  const areas: Area[] = [];
  const corners = new Map<string, Point>([[node.id, { x: width - 10, y: markStrip / 2 }]]);
  const ports = new Map<string, Point>();
  let axis = firstAxis;
  for (const each of inside.sections) {
    const start = axis;
    const feeding = each.rcd ? section : mainBar;
    for (const row of each.rows) {
      const drawing = rowDrawing(row, x(0), x(feeding), x(inner), axis);
      shapes.push(...drawing.shapes);
      areas.push(...drawing.areas);
      corners.set(row.device.id, drawing.corner);
      if (row.port) ports.set(row.port, { x: x(0), y: axis });
      axis += rowPitch;
    }
    if (each.rcd) {
      axis = Math.max(axis, start + rowPitch);
      const at = even((start + axis - rowPitch) / 2);
      const drawing = rcdDrawing(each, x, section, mainBar, at);
      shapes.push(...drawing.shapes);
      areas.push(...drawing.areas);
      corners.set(each.rcd.id, { x: (x(section) + x(mainBar)) / 2 + reach, y: at - rise - 6 });
      shapes.push(upright(x(section), start - 6, Math.max(axis - rowPitch, at) + 6, 3));
    }
  }
  const taps = node.ports.filter(({ id }) => id !== inside.incoming && !ports.has(id));
  for (const { id } of taps) {
    ports.set(id, { x: x(0), y: axis });
    shapes.push(line(x(0), axis, x(mainBar), axis, style));
    const words = lines(
      [id.slice(node.id.length + 1)],
      x(8),
      axis - lineHeight - 2,
      isMirrored ? "end" : "start",
      false,
    );
    shapes.push(...words.shapes);
    areas.push(words.area);
    axis += rowPitch;
  }
  const last = Math.max(axis - rowPitch, firstAxis);
  shapes.push(upright(x(mainBar), firstAxis - 12, last + 12));

  const incoming = chain(inOrder, isMirrored ? width - mainBar - 8 - mains.width : mainBar + 8, firstAxis);
  shapes.push(...incoming.shapes);
  areas.push(...incoming.areas);
  for (const [id, corner] of incoming.corners) corners.set(id, corner);
  shapes.push(line(x(mainBar), firstAxis, x(mainBar + 8), firstAxis, style));
  shapes.push(line(x(mainBar + 8 + mains.width), firstAxis, x(width), firstAxis, style));
  ports.set(inside.incoming, { x: x(width), y: firstAxis });

  let bottom = Math.max(last + rise + 8, firstAxis + chainBelow(inside.mains));
  if (inside.unused !== undefined) {
    const unused = lines([inside.unused], 10, bottom, "start", false);
    shapes.push(...unused.shapes.map((each) => ({ ...each, fill: "faint" as const })));
    areas.push(unused.area);
    bottom += lineHeight + 4;
  }
  const head = lines(node.label, 10, headTop, "start");
  const height = even(bottom + 4);
  return {
    width,
    height,
    ports,
    shapes: [rect(0, markStrip, width, height - markStrip, frame), ...head.shapes, ...shapes],
    areas: [head.area, ...areas],
    corners,
  };
}

function rcdColumn(sections: readonly Section[]): number {
  const widths = sections.flatMap(({ rcd }) => (rcd ? [Math.max(2 * reach, linesWidth(rcd.label)) + 12] : []));
  return even(Math.max(0, ...widths));
}

function rcdDrawing(
  { rcd }: Section,
  x: (value: number) => number,
  section: number,
  mainBar: number,
  axis: number,
): { readonly shapes: readonly Shape[]; readonly areas: readonly Area[] } {
  if (!rcd) return { shapes: [], areas: [] };
  const middle = (x(section) + x(mainBar)) / 2;
  const direction = x(mainBar) > x(section) ? 1 : -1;
  const [name = "", ...facts] = rcd.label;
  const above = lines([name], middle, axis - rise - lineHeight - 1, "middle");
  const below = lines(facts, middle, axis + 10, "middle", false);
  const drawing = [
    line(x(section), axis, middle - direction * reach, axis, style),
    line(middle + direction * reach, axis, x(mainBar), axis, style),
    // The ring belongs on the side of the ways.
    symbol("rcd", { x: middle, y: axis }, direction === 1 ? -1 : 1),
    ...above.shapes,
    ...below.shapes,
  ];
  const about = { id: rcd.id, sort: "device", label: rcd.description };
  const symbolArea = { x: middle - reach, y: axis - rise, w: 2 * reach, h: rise + 8, what: "rcd" };
  return { shapes: [group(drawing, about)], areas: [symbolArea, above.area, below.area] };
}
