import type { Given, Source } from "./figure.js";
import { tabulated } from "./make.js";

/**
 * Largest resistance of copper conductors at 20 °C by IEC 60228, in Ω/km by nominal cross-section in mm².
 * Class 1 is solid, class 2 stranded (fixed wiring), class 5 flexible; tinned (metal-coated) is what PV cable has.
 */
export interface ConductorKind {
  /** `class-1`, `class-2` or `class-5`: the words of the cable's property. */
  readonly conductorClass: string;
  /** `plain` or `tinned`. */
  readonly coating: string;
}

const source: Source = { title: "IEC 60228:2004", clause: "maximum resistance of conductors at 20 °C", basis: "read" };

/** Cross-sections of the four columns below, mm². */
export const standardSizes = [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95] as const;

const class2Plain = [18.1, 12.1, 7.41, 4.61, 3.08, 1.83, 1.15, 0.727, 0.524, 0.387, 0.268, 0.193];
const class2Coated = [18.2, 12.2, 7.56, 4.7, 3.11, 1.84, 1.16, 0.734, 0.529, 0.391, 0.27, 0.195];
const class5Plain = [19.5, 13.3, 7.98, 4.95, 3.3, 1.91, 1.21, 0.78, 0.554, 0.386, 0.272, 0.206];
const class5Coated = [20, 13.7, 8.21, 5.09, 3.39, 1.95, 1.24, 0.795, 0.565, 0.393, 0.277, 0.21];

function column(name: string, values: readonly number[], from = source): ReadonlyMap<number, Given> {
  return new Map(
    values.map((value, index) => {
      const size = standardSizes[index]!;
      return [size, tabulated("r20", value / 1000, "resistance-per-length", "ohm/km", `${name}, ${size} mm²`, from)];
    }),
  );
}

// Up to 16 mm² solid and stranded plain copper share their limits; larger solid conductors are not made for wiring.
const solid = class2Plain.slice(0, standardSizes.indexOf(16) + 1);
type Column = ReadonlyMap<number, Given>;
const columns: Readonly<Record<string, { readonly plain: Column; readonly tinned?: Column }>> = {
  "class-1": { plain: column("IEC 60228 class 1, plain copper", solid, { ...source, basis: "memory" }) },
  "class-2": {
    plain: column("IEC 60228 class 2, plain copper", class2Plain),
    tinned: column("IEC 60228 class 2, metal-coated copper", class2Coated),
  },
  "class-5": {
    plain: column("IEC 60228 class 5, plain copper", class5Plain),
    tinned: column("IEC 60228 class 5, metal-coated copper", class5Coated),
  },
};

/** Nominal size in mm² of a cross-section in m², rid of the rounding error of the unit conversion. */
export function nominalSize(crossSection: number): number {
  return Math.round(crossSection * 1e8) / 100;
}

/** Resistance per metre of conductor at 20 °C for a cross-section in m²; undefined for a kind or size without a row. */
export function tableResistance(kind: ConductorKind, crossSection: number): Given | undefined {
  const ofClass = columns[kind.conductorClass];
  const rows = kind.coating === "tinned" ? ofClass?.tinned : ofClass?.plain;
  return rows?.get(nominalSize(crossSection));
}
