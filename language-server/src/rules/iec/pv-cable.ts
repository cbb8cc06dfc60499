import { type AmbientRule, type AmpacityColumn, ampacityColumn, type SizeTable } from "../../physics/ampacity.js";
import { celsius } from "../../physics/constants.js";
import type { Source } from "../../physics/figure.js";

/** PV cable to EN 50618: capacity in free air and on surfaces, for air at 60 °C and conductors at 120 °C. */

const source: Source = { title: "EN 50618", clause: "Table A.3", basis: "memory" };

/**
 * The heat balance between air and a conductor at 120 °C. The printed factors (0.92 at 70 °C) are known from memory
 * only and are a little more generous, so the balance is used; below 60 °C no gain is taken, as in the standard.
 */
export const pvAmbient: AmbientRule = {
  conductor: celsius(120),
  reference: celsius(60),
  source: { title: "heat balance of a conductor at 120 °C in air at Ta", basis: "arithmetic" },
};

export const singleFreeInAir: SizeTable = [
  [1.5, 30],
  [2.5, 41],
  [4, 55],
  [6, 70],
  [10, 98],
  [16, 132],
  [25, 176],
  [35, 218],
  [50, 276],
  [70, 347],
  [95, 416],
];
export const singleOnSurface: SizeTable = [
  [1.5, 29],
  [2.5, 39],
  [4, 52],
  [6, 67],
  [10, 93],
  [16, 125],
  [25, 167],
  [35, 207],
  [50, 262],
  [70, 330],
  [95, 395],
];
export const twoTouchingOnSurface: SizeTable = [
  [1.5, 24],
  [2.5, 33],
  [4, 44],
  [6, 57],
  [10, 79],
  [16, 107],
  [25, 142],
  [35, 176],
  [50, 221],
  [70, 278],
  [95, 333],
];

function column(name: string, methods: readonly string[], rows: SizeTable, read: readonly number[]): AmpacityColumn {
  const head = {
    insulation: "pv-120",
    types: ["pv"],
    methods,
    loadedConductors: 2,
    ambient: pvAmbient,
  } as const;
  return ampacityColumn(head, `EN 50618 Table A.3, ${name}`, source, rows, read);
}

/** Where the table has no column for a way of laying, the next worse column is taken (tray and clips: touching). */
export const pvColumns: readonly AmpacityColumn[] = [
  column("one cable free in air", ["free-in-air"], singleFreeInAir, [1.5, 2.5, 4, 6, 10, 16, 25]),
  column("one cable on a surface", ["on-surface"], singleOnSurface, []),
  column(
    "two cables touching on a surface",
    ["touching-on-surface", "clipped-direct", "tray"],
    twoTouchingOnSurface,
    [4],
  ),
];
