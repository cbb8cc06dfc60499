import type { SymbolName } from "../diagram.js";
import { rect, type Shape, text } from "../picture.js";
import { earth, electrode, spd } from "./earthing.js";
import { type Pen, pen, reach, thin } from "./pen.js";
import { array, battery, generator, inverter, load, meter, supply } from "./sources.js";
import { breaker, fuse, isolator, rcbo, rcd } from "./switching.js";

/** Symbols that lie in a line, with a lead on either side; all others have one lead. */
const passed = new Set<SymbolName>(["isolator", "fuse", "breaker", "rcd", "rcbo", "meter", "unknown"]);

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

export function isPassed(name: SymbolName): boolean {
  return passed.has(name);
}

/** The symbol around the origin. Its lead comes from the left, or from the right where `mirror` is −1. */
export function symbol(name: SymbolName, mirror: 1 | -1 = 1): Shape[] {
  return (drawings[name] ?? unknown)(pen(mirror));
}

function unknown({ line }: Pen): Shape[] {
  return [
    line([-reach, 0], [-11, 0]),
    line([11, 0], [reach, 0]),
    rect(-11, -11, 22, 22, { stroke: "ink", width: thin, fill: "paper" }),
    text(0, 4, "?", { size: 11, anchor: "middle" }),
  ];
}
