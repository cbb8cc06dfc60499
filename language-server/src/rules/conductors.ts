import { toSi } from "@sunwright/grammar";
import { factorTable } from "../physics/ampacity.js";
import { celsius } from "../physics/constants.js";
import type { AdiabaticFactors } from "../physics/fault-energy.js";
import type { Given, Source } from "../physics/figure.js";
import type { BondingSizes, ProtectiveSizes } from "../physics/protective-size.js";
import { ruleFigure } from "./rule-set.js";

/** Figures of conductors that the rule sets share: heat, insulation, protective sizes. */

function byInsulation(symbol: string, what: string, rows: readonly (readonly [string, number, Source])[]) {
  const figures = rows.map(([insulation, degrees, source]): [string, Given] => [
    insulation,
    ruleFigure(symbol, celsius(degrees), "temperature", "degC", `${what}, ${insulation}`, source),
  ]);
  return new Map(figures);
}

const insulated: Source = {
  title: "BS 7671:2018 and IEC 60364-5-52",
  clause: "Table 52.1, highest conductor temperatures",
  basis: "memory",
};
const pvCable: Source = { title: "EN 50618", clause: "highest conductor temperature", basis: "memory" };

export const conductorTemperature = byInsulation("Tc", "conductor temperature at full load", [
  ["thermoplastic-70", 70, insulated],
  ["thermosetting-90", 90, insulated],
  ["pv-120", 120, pvCable],
]);

const armour: Source = {
  title: "BS 7671:2018",
  clause: "Table 54.4, initial temperatures of armour",
  basis: "memory",
};

export const armourTemperature = byInsulation("Ta", "armour temperature at full load", [
  ["thermoplastic-70", 60, armour],
  ["thermosetting-90", 80, armour],
]);

export const reactance = ruleFigure(
  "λ",
  0.08e-3,
  "resistance-per-length",
  "mohm/m",
  "reactance of one conductor where no table has it",
  { title: "IEC 60364-5-52", clause: "Annex G, reactance where nothing else is known", basis: "memory" },
);

/** Lengths in m, up to each row's; from half a metre on the cable is surrounded for good. */
export function thermalInsulation(source: Source) {
  return factorTable("Ci", "thermal insulation around the cable, by length", source, [
    [0.05, 0.88],
    [0.1, 0.78],
    [0.2, 0.63],
    [0.4, 0.51],
    [Number.POSITIVE_INFINITY, 0.5],
  ]);
}

const kSource: Source = {
  title: "BS 7671:2018",
  clause: "Tables 43.1 and 54.2 to 54.4, values of k",
  basis: "read",
};

function k(place: string, insulation: string, value: number): [string, Given] {
  const text = `k of ${kNames[place]}, ${insulation}`;
  return [`${place}/${insulation}`, ruleFigure("k", value, "number", "", text, kSource)];
}
const kNames: Readonly<Record<string, string>> = {
  core: "a copper core in a cable or bunched with cables",
  separate: "a copper conductor apart from cables",
  armour: "steel armour",
  live: "a live copper conductor",
};

/** For copper up to 300 mm². */
export const adiabaticFactors: AdiabaticFactors = new Map([
  k("core", "thermoplastic-70", 115),
  k("core", "thermosetting-90", 143),
  k("separate", "thermoplastic-70", 143),
  k("separate", "thermosetting-90", 176),
  k("armour", "thermoplastic-70", 51),
  k("armour", "thermosetting-90", 46),
  k("live", "thermoplastic-70", 115),
  k("live", "thermosetting-90", 143),
]);

/** A cross-section of a rule set, from mm². */
export function squareMillimetres(symbol: string, value: number, text: string, source: Source): Given {
  return ruleFigure(symbol, toSi(value, "mm2"), "area", "mm2", text, source);
}

export function protectiveSizes(
  table: Source,
  apart: Source,
  toElectrode: Given,
  bonding: BondingSizes,
): ProtectiveSizes {
  return {
    source: table,
    equalUpTo: squareMillimetres("Sequal", 16, "line conductors up to here have an equal protective conductor", table),
    fixedUpTo: squareMillimetres("Sfixed", 35, "line conductors up to here have one of 16 mm²", table),
    apartProtected: squareMillimetres("Smin", 2.5, "laid apart, protected against mechanical damage", apart),
    apartUnprotected: squareMillimetres("Smin", 4, "laid apart, not protected against mechanical damage", apart),
    toElectrode,
    bonding,
  };
}
