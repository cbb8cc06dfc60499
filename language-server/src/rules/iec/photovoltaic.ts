import { toSi } from "@sunwright/grammar";
import { coldFactors } from "../../physics/cold-factors.js";
import type { Given, Source } from "../../physics/figure.js";
import type { StringFuseRule } from "../../physics/string-fuse.js";
import { ruleFigure } from "../rule-set.js";
import * as source from "./sources.js";

/** Figures of the array itself: cold voltage, fuses of parallel strings, how hot the cells get. */

/** Lowest whole °C of each band with its factor; from 25 °C up the voltage is at most the data sheet's. */
const coldRows = [
  [25, 1],
  [20, 1.02],
  [15, 1.04],
  [10, 1.06],
  [5, 1.08],
  [0, 1.1],
  [-5, 1.12],
  [-10, 1.14],
  [-15, 1.16],
  [-20, 1.18],
  [-25, 1.2],
  [-30, 1.21],
  [-35, 1.23],
  [-40, 1.25],
] as const;

export const cold = coldFactors(coldRows, 1.2, source.coldTable, source.coldUnknown);

function factor(symbol: string, value: number, text: string, from: Source): Given {
  return ruleFigure(symbol, value, "number", "", text, from);
}

/** Fuse ratings between 1.5 and 2.4 times Isc, never above the module's rating. */
export const fuse62548: StringFuseRule = {
  source: source.fuse62548,
  basis: "isc",
  neededAbove: factor("f", 1, "reverse current up to the module's series-fuse rating", source.fuse62548),
  lowest: factor("fmin", 1.5, "lowest rating over Isc", source.fuse62548),
  lowestIsExcluded: true,
  highest: factor("fmax", 2.4, "highest rating over Isc", source.fuse62548),
};

/** The other published form, on Isc,max: a little laxer in every respect. */
export const fuse712: StringFuseRule = {
  source: source.fuse712,
  basis: "isc-max",
  neededAbove: factor("f", 1.35, "reverse current over the module's series-fuse rating", source.fuse712),
  lowest: factor("fmin", 1.1, "lowest rating over Isc,max", source.fuse712),
  lowestIsExcluded: false,
};

const guideline: Source = {
  title: "Clean Energy Council, grid-connected PV design guideline",
  clause: "cell temperature rise by mounting",
  basis: "memory",
};
const buildUp: Source = { title: "rise of cells without air behind them", basis: "practice" };

function rise(kelvin: number, mounting: string, from: Source): Given {
  return {
    kind: "given",
    symbol: "ΔT",
    value: kelvin,
    dimension: "temperature-difference",
    unit: "K",
    origin: {
      kind: "assumed",
      text: `cells in full sun run ${kelvin} K hotter than the air: ${mounting}`,
      source: from,
    },
  };
}

/** By the word of the property `mounting`. Nobody states this figure, so it is listed as an assumption. */
export const cellRise: ReadonlyMap<string, Given> = new Map([
  ["ground", rise(25, "free-standing, air all round", guideline)],
  ["flat-roof", rise(30, "tilted rack on a flat roof", guideline)],
  ["on-roof", rise(35, "parallel to the roof with a gap behind", guideline)],
  ["facade", rise(35, "upright with a gap behind, taken as on a roof", buildUp)],
  ["in-roof", rise(45, "in place of the roof covering, no air behind", buildUp)],
]);

function ohms(value: number, from: Source): Given {
  return ruleFigure("Riso,min", toSi(value, "Mohm"), "resistance", "Mohm", "least insulation resistance", from);
}
function volts(value: number, from: Source): Given {
  return ruleFigure("Utest", value, "voltage", "V", "insulation test voltage", from);
}

export const insulationTest = [
  {
    upTo: 120,
    including: false,
    testVoltage: volts(250, source.insulation),
    leastResistance: ohms(0.5, source.insulationMemory),
  },
  {
    upTo: 500,
    including: true,
    testVoltage: volts(500, source.insulation),
    leastResistance: ohms(1, source.insulation),
  },
  {
    upTo: 1000,
    including: true,
    testVoltage: volts(1000, source.insulation),
    leastResistance: ohms(1, source.insulation),
  },
  {
    upTo: Number.POSITIVE_INFINITY,
    including: true,
    testVoltage: volts(1500, source.insulationMemory),
    leastResistance: ohms(1, source.insulationMemory),
  },
] as const;

export const insulationVoltageFactor = factor("f", 1.25, "system voltage of the test over Uoc", source.insulation);
