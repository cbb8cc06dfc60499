import { type AmbientRule, factorTable } from "../../physics/ampacity.js";
import { celsius } from "../../physics/constants.js";
import type { Source } from "../../physics/figure.js";

/** BS 7671 Appendix 4, factors for the surroundings of a cable. */

function app4(clause: string): Source {
  return { title: "BS 7671:2018, Appendix 4", clause, basis: "memory" };
}

const air = app4("Table 4B1, cables in air");
const ground = app4("Table 4B2, cables in the ground");

/** Air around the cable, table at 30 °C. */
export const air70: AmbientRule = {
  conductor: celsius(70),
  reference: celsius(30),
  coolest: { ambient: celsius(25), factor: 1.03 },
  source: air,
};
export const air90: AmbientRule = {
  conductor: celsius(90),
  reference: celsius(30),
  coolest: { ambient: celsius(25), factor: 1.02 },
  source: air,
};
/** Ground at 20 °C and 2.5 K·m/W; no credit for cooler ground. */
export const ground70: AmbientRule = { conductor: celsius(70), reference: celsius(20), source: ground };
export const ground90: AmbientRule = { conductor: celsius(90), reference: celsius(20), source: ground };

/** Circuits that run together, Table 4C1, by their number. */
export const bunched = factorTable("Cg", "circuits bunched or enclosed together", app4("Table 4C1, item 1"), [
  [1, 1],
  [2, 0.8],
  [3, 0.7],
  [4, 0.65],
  [5, 0.6],
  [6, 0.57],
  [7, 0.54],
  [8, 0.52],
  [9, 0.5],
  [12, 0.45],
  [16, 0.41],
  [20, 0.38],
]);
export const singleLayer = factorTable("Cg", "circuits side by side on a wall", app4("Table 4C1, item 2"), [
  [1, 1],
  [2, 0.85],
  [3, 0.79],
  [4, 0.75],
  [5, 0.73],
  [6, 0.72],
  [7, 0.72],
  [8, 0.71],
  [9, 0.7],
]);
export const onTray = factorTable("Cg", "circuits side by side on a perforated tray", app4("Table 4C1, item 4"), [
  [1, 1],
  [2, 0.88],
  [3, 0.82],
  [4, 0.77],
  [5, 0.75],
  [6, 0.73],
  [7, 0.73],
  [8, 0.72],
  [9, 0.72],
]);
/** Without the table of grouped buried cables only a circuit by itself can be judged. */
export const buriedAlone = factorTable("Cg", "one circuit alone in the ground", app4("Table 4C2"), [[1, 1]]);
