import { formatNumber } from "../../physics/display.js";
import { circle, group, line, type Paint, type Picture, path, polyline, rect, type Shape, text } from "../picture.js";
import { fitText, textWidth, wrapText } from "../text-width.js";
import type { Table } from "./table.js";
import { ticks } from "./ticks.js";

/** A diagram with two axes as plain data: curves, limits as lines across, ranges as bands. */
export interface Plot {
  readonly title: string;
  readonly subtitle: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  /** Lines across: limits, each with its words at the right edge. */
  readonly limits: readonly { readonly y: number; readonly words: string; readonly isStrict: boolean }[];
  /** Ranges along x or y. */
  readonly bands: readonly {
    readonly along: "x" | "y";
    readonly from: number;
    readonly to: number;
    readonly words: string;
  }[];
  readonly points: readonly { readonly x: number; readonly y: number; readonly words: string }[];
  /** Sentences below. */
  readonly notes: readonly string[];
  /** Its limits and points in figures; the curves are in a table of their own. */
  readonly tables: readonly Table[];
}
export interface Axis {
  readonly words: string;
  readonly from: number;
  readonly to: number;
}
export interface Curve {
  readonly words: string;
  readonly paint: Paint;
  readonly dash?: readonly number[];
  readonly width?: number;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** The same anywhere along x. */
  readonly at: (x: number) => number;
  readonly unit: string;
}

const size = 10;
const area = { left: 76, top: 76, width: 500, height: 330 };
const right = 210;
const whole = area.left + area.width + right;

export function plotPicture(plot: Plot): Picture {
  const { x, y } = plot;
  const atX = (value: number): number => area.left + ((value - x.from) / (x.to - x.from)) * area.width;
  const atY = (value: number): number => area.top + area.height - ((value - y.from) / (y.to - y.from)) * area.height;
  const shapes: Shape[] = [
    text(20, 28, fitText(plot.title, 15, whole - 40, true), { size: 15, bold: true }),
    text(20, 45, fitText(plot.subtitle, size, whole - 40), { size, fill: "faint" }),
    ...bands(plot, atX, atY),
    ...grid(plot, atX, atY),
    ...plot.curves.map((curve) => curveShape(curve, atX, atY)),
    ...limits(plot, atY),
    ...points(plot, atX, atY),
  ];
  const foot = legend(plot, area.top + area.height + 54);
  return {
    width: whole,
    height: foot.bottom + 14,
    title: plot.title,
    description: [plot.subtitle, ...plot.limits.map(({ words }) => words), ...plot.notes].join(" "),
    shapes: [...shapes, ...foot.shapes],
  };
}

type Scale = (value: number) => number;

const brackets = { stroke: "third", width: 1, dash: [1, 3] } as const;

function grid({ x, y }: Plot, atX: Scale, atY: Scale): Shape[] {
  const bottom = area.top + area.height;
  const shapes: Shape[] = [];
  for (const value of ticks(x.from, x.to, 8)) {
    shapes.push(line(atX(value), area.top, atX(value), bottom, { stroke: "rule", width: 0.6 }));
    shapes.push(text(atX(value), bottom + 15, formatNumber(value), { size, anchor: "middle" }));
  }
  for (const value of ticks(y.from, y.to)) {
    shapes.push(line(area.left, atY(value), area.left + area.width, atY(value), { stroke: "rule", width: 0.6 }));
    shapes.push(text(area.left - 7, atY(value) + 3.5, formatNumber(value), { size, anchor: "end" }));
  }
  shapes.push(rect(area.left, area.top, area.width, area.height, { stroke: "ink", width: 1 }));
  shapes.push(text(area.left + area.width / 2, bottom + 31, x.words, { size, anchor: "middle", bold: true }));
  shapes.push(text(20, area.top - 8, y.words, { size, bold: true }));
  return shapes;
}

function bands(plot: Plot, atX: Scale, atY: Scale): Shape[] {
  return plot.bands.flatMap(({ along, from, to, words }): Shape[] => {
    const axis = along === "x" ? plot.x : plot.y;
    const [low, high] = [Math.max(from, axis.from), Math.min(to, axis.to)];
    if (high <= low) return [];
    const shapes =
      along === "x"
        ? [
            rect(atX(low), area.top, atX(high) - atX(low), area.height, { fill: "band" }),
            text((atX(low) + atX(high)) / 2, area.top + 12, fitText(words, 9, atX(high) - atX(low)), {
              size: 9,
              anchor: "middle",
              fill: "faint",
            }),
          ]
        : [
            ...[low, high].map((edge) => line(area.left, atY(edge), area.left + area.width, atY(edge), brackets)),
            path(`M${area.left + 8} ${atY(low) - 3}L${area.left + 8} ${atY(high) + 3}`, {
              stroke: "third",
              width: 1.2,
            }),
            ...onPaper(
              area.left + 14,
              clearLine(plot, words, [atY(high), atY(low)], atX, atY),
              words,
              9,
              "start",
              "third",
            ),
          ];
    return [group(shapes, { sort: "band", label: words })];
  });
}

/** The base line, between two heights, of words at the left edge that curves and limits leave the most room. */
function clearLine(
  plot: Plot,
  words: string,
  [top, bottom]: readonly [number, number],
  atX: Scale,
  atY: Scale,
): number {
  const right = area.left + 14 + textWidth(words, 9, true);
  const near = plot.curves.flatMap(({ points: all }) =>
    all.slice(1).flatMap((to, index) => {
      const from = all[index]!;
      const [start, end] = [atX(from.x), Math.min(atX(to.x), right)];
      if (start >= right) return [];
      const share = (end - start) / (atX(to.x) - start || 1);
      return [atY(from.y), atY(from.y + share * (to.y - from.y))];
    }),
  );
  const lines = [...near, ...plot.limits.map(({ y }) => atY(y)), top, bottom];
  const room = (at: number): number => Math.min(...lines.map((each) => Math.abs(each - (at - 3))));
  let best = (top + bottom) / 2;
  for (let at = top + 16; at < bottom - 8; at += 4) if (room(at) > room(best)) best = at;
  return best;
}

function curveShape({ words, paint, dash, width = 2, points: all }: Curve, atX: Scale, atY: Scale): Shape {
  const d = polyline(all.map(({ x, y }) => ({ x: atX(x), y: atY(y) })));
  return group([path(d, { stroke: paint, width, dash })], { sort: "curve", label: words });
}

/** Words at the right edge, pushed apart where limits lie close together. */
function limits(plot: Plot, atY: Scale): Shape[] {
  const inside = plot.limits.filter(({ y }) => y >= plot.y.from && y <= plot.y.to).sort((a, b) => b.y - a.y);
  const edge = area.left + area.width;
  let last = Number.NEGATIVE_INFINITY;
  return inside.map(({ y, words, isStrict }) => {
    const at = atY(y);
    const label = Math.max(at, last + 14);
    last = label;
    const paint = isStrict ? "error" : "note";
    return group(
      [
        line(area.left, at, edge, at, { stroke: paint, width: 1.4, dash: isStrict ? [7, 3] : [2, 3] }),
        line(edge, at, edge + 10, label, { stroke: paint, width: 0.8 }),
        text(edge + 14, label + 3.5, fitText(words, size, right - 22), { size, fill: paint }),
      ],
      { sort: "limit", label: words },
    );
  });
}

function points(plot: Plot, atX: Scale, atY: Scale): Shape[] {
  // Neighbours' words stand above and below in turn.
  return plot.points.map(({ x, y, words }, index) => {
    const [px, py] = [atX(x), atY(y)];
    const width = textWidth(words, size, true);
    const fits = { start: px + 10 + width < area.left + area.width, end: px - 10 - width > area.left };
    const wanted = index % 2 === 0 ? "start" : "end";
    const anchor = fits[wanted] ? wanted : wanted === "start" ? "end" : "start";
    return group(
      [
        ...onPaper(px + (anchor === "start" ? 8 : -8), py + (index % 2 === 0 ? -8 : 17), words, size, anchor, "ink"),
        circle(px, py, 4, { stroke: "ink", width: 1.4, fill: "paper" }),
      ],
      { sort: "point", label: words },
    );
  });
}

/** Words over lines, on a piece of paper of their own. */
function onPaper(x: number, y: number, words: string, of: number, anchor: "start" | "end", fill: Paint): Shape[] {
  const width = textWidth(words, of, true);
  const left = anchor === "start" ? x : x - width;
  return [
    rect(left - 2, y - of, width + 4, of + 3.5, { fill: "paper", opacity: 0.85, radius: 2 }),
    text(x, y, words, { size: of, bold: true, anchor, fill }),
  ];
}

function legend({ curves, notes }: Plot, top: number): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const shapes: Shape[] = [];
  let at = top;
  for (const { words, paint, dash, width = 2 } of curves) {
    shapes.push(line(area.left, at - 3.5, area.left + 40, at - 3.5, { stroke: paint, width, dash }));
    shapes.push(text(area.left + 50, at, words, { size }));
    at += 15;
  }
  at += 4;
  for (const note of notes)
    for (const each of wrapText(note, size, whole - area.left - 30)) {
      shapes.push(text(area.left, at, each, { size, fill: "faint" }));
      at += 13;
    }
  return { shapes, bottom: at };
}
