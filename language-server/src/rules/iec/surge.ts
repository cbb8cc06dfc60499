import { toSi } from "@sunwright/grammar";
import type { Given } from "../../physics/figure.js";
import type { WithstandTable } from "../../physics/surge.js";
import { ruleFigure } from "../rule-set.js";
import * as source from "./sources.js";

/** Figures of surge protection on the DC side. */

function constant(value: number, site: string): Given {
  return ruleFigure("kL", value, "number", "", `constant of the critical length, ${site}`, source.criticalLength);
}

/** By the word of `site { building: … }`; metres for a flash density in flashes per km² and year. */
export const criticalLengthConstants: ReadonlyMap<string, Given> = new Map([
  ["dwelling", constant(115, "dwelling")],
  ["ground-mounted", constant(200, "ground plant")],
  ["other-building", constant(450, "other building")],
]);

function withstand(kilovolts: number, what: string): Given {
  return ruleFigure("Uw", toSi(kilovolts, "kV"), "voltage", "kV", what, source.impulseWithstand);
}

function row(upTo: number, inverter: number, moduleBasic: number, moduleReinforced: number) {
  return {
    upTo,
    inverter: withstand(inverter, `impulse withstand of the inverter for arrays up to ${upTo} V`),
    moduleBasic: withstand(moduleBasic, `impulse withstand of a module, basic insulation, up to ${upTo} V`),
    moduleReinforced: withstand(moduleReinforced, `impulse withstand of a class II module, up to ${upTo} V`),
  };
}

/** V of the array; then kV of inverter, module with basic and module with reinforced insulation. */
export const impulseWithstand: WithstandTable = {
  rows: [
    row(100, 2.5, 0.8, 1.5),
    row(150, 2.5, 1.5, 2.5),
    row(300, 2.5, 2.5, 4),
    row(600, 4, 4, 6),
    row(800, 5, 5, 6),
    row(1000, 6, 6, 8),
    row(1500, 8, 8, 12),
  ],
};
