import type { SymbolName } from "../diagram.js";
import { type GroupShape, group, rect, type Shape, text } from "../picture.js";
import { earth, electrode, spd } from "./earthing.js";
import { type Pen, pen, reach, rise, thin } from "./pen.js";
import { array, battery, generator, inverter, load, meter, supply } from "./sources.js";
import { breaker, drawnFuse, fuse, isolator, rcbo, rcd } from "./switching.js";

const drawings: Readonly<Partial<Record<SymbolName, (pen: Pen) => Shape[]>>> = {
  array,
  isolator,
  fuse,
  breaker,
  rcd,
  rcbo,
  spd,
  inverter,
  battery,
  meter,
  earth,
  electrode,
  load,
  supply,
  generator,
};

/** The symbol, with its middle at a place. Its lead comes from the left, or from the right where `mirror` is −1. */
export function symbol(
  name: SymbolName,
  at: { readonly x: number; readonly y: number },
  mirror: 1 | -1 = 1,
): GroupShape {
  const draw = drawings[name] ?? unknown;
  const poses = posesOf(name, draw, mirror);
  const extent = name === "inverter" ? inverterExtent : lineExtent;
  return group(draw(pen(mirror)), { sort: "symbol", ...at, extent, ...(poses && { poses }) });
}

/** Ends above the words that stand below some symbols. */
const lineExtent = { x: -reach, y: -rise, w: 2 * reach, h: rise + 11 } as const;
const inverterExtent = { x: -18, y: -18, w: 36, h: 36 } as const;
const switching = new Set<SymbolName>(["isolator", "breaker", "rcd", "rcbo"]);

function posesOf(name: SymbolName, draw: (pen: Pen) => Shape[], mirror: 1 | -1): GroupShape["poses"] {
  if (switching.has(name)) return { open: draw(pen(mirror)), closed: draw(pen(mirror, true)) };
  if (name === "fuse") return { open: drawnFuse(pen(mirror)) };
  return undefined;
}

function unknown({ line }: Pen): Shape[] {
  return [
    line([-reach, 0], [-11, 0]),
    line([11, 0], [reach, 0]),
    rect(-11, -11, 22, 22, { stroke: "ink", width: thin, fill: "paper" }),
    text(0, 4, "?", { size: 11, anchor: "middle" }),
  ];
}
