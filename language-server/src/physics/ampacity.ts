import { nominalSize } from "./conductor-tables.js";
import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive, tabulated } from "./make.js";

/** Current-carrying capacity: Iz = It · Ca · Cg · Ci, each factor from a table of the rule set. */

/** One column of a published table, ready to look up. The words are those of the cable's and the run's properties. */
export interface AmpacityColumn {
  /** `pv-120`, `thermosetting-90`, `thermoplastic-70`. */
  readonly insulation: string;
  /** Cable types: `pv`, `singles`, … */
  readonly types: readonly string[];
  readonly methods: readonly string[];
  readonly loadedConductors: 2 | 3;
  readonly ambient: AmbientRule;
  /** By nominal size in mm². */
  readonly ratings: ReadonlyMap<number, Given>;
}

/** How a table's capacity changes with the temperature around the cable. All temperatures in K. */
export interface AmbientRule {
  /** Conductor temperature and surroundings that the table holds for. */
  readonly conductor: number;
  readonly reference: number;
  /** Coolest printed row with its factor, where the table allows more current below its reference; else none is taken. */
  readonly coolest?: { readonly ambient: number; readonly factor: number };
  readonly source: Source;
}

/** A column from [size in mm², A]; `read` lists the sizes that were read in print where the rest is from memory. */
export function ampacityColumn(
  head: Omit<AmpacityColumn, "ratings">,
  name: string,
  source: Source,
  rows: SizeTable,
  read: readonly number[] = [],
): AmpacityColumn {
  const readSource: Source = { ...source, basis: "read" };
  const ratings = rows.map(([size, amperes]): [number, Given] => [
    size,
    tabulated("It", amperes, "current", "A", `${name}, ${size} mm²`, read.includes(size) ? readSource : source),
  ]);
  return { ...head, ratings: new Map(ratings) };
}

/** Rows of [nominal size in mm², figure], smallest first. */
export type SizeTable = readonly (readonly [size: number, value: number])[];

export interface CableQuestion {
  readonly insulation: string;
  readonly type: string;
  readonly method: string;
  readonly loadedConductors: 2 | 3;
}

/** The column for a cable laid in a certain way, or undefined: then the check cannot be made. */
export function findColumn(columns: readonly AmpacityColumn[], cable: CableQuestion): AmpacityColumn | undefined {
  return columns.find(
    (column) =>
      column.insulation === cable.insulation &&
      column.types.includes(cable.type) &&
      column.loadedConductors === cable.loadedConductors &&
      column.methods.includes(cable.method),
  );
}

/** Tabulated current It of a cross-section in m², or undefined for a size outside the table. */
export function tabulatedCurrent(column: AmpacityColumn, crossSection: number): Given | undefined {
  return column.ratings.get(nominalSize(crossSection));
}

const identity = "√((Tp − Ta) / (Tp − Tref))";

/**
 * Factor for the surroundings, a ratio. At and above the table's reference the heat balance gives every printed cell
 * to two digits; below it the printed gain is taken, if the table prints one. Zero where the air is as hot as the
 * conductor may become.
 */
export function ambientFactor(ambient: Figure, rule: AmbientRule): Derived {
  const { conductor, reference, coolest, source } = rule;
  const ta = as("Ta", ambient);
  if (ambient.value <= reference) {
    if (!coolest) return derive("Ca", 1, "ratio", "", "1", [], source, "no credit below the table's temperature");
    const cooler = Math.min((reference - ambient.value) / (reference - coolest.ambient), 1);
    const gain = 1 + (coolest.factor - 1) * cooler;
    return derive("Ca", gain, "ratio", "", "Ca(Ta)", [ta], source);
  }
  const value = Math.sqrt(Math.max(conductor - ambient.value, 0) / (conductor - reference));
  return derive(
    "Ca",
    value,
    "ratio",
    "",
    identity,
    [figureOf("Tp", conductor, rule), ta, figureOf("Tref", reference, rule)],
    source,
  );
}

function figureOf(symbol: string, kelvin: number, rule: AmbientRule): Given {
  return tabulated(symbol, kelvin, "temperature", "degC", "temperature that the table holds for", rule.source);
}

/** A table of factors by whole numbers (circuits) or lengths; a value between two rows takes the later row. */
export interface FactorTable {
  readonly source: Source;
  readonly rows: readonly { readonly upTo: number; readonly factor: Given }[];
}

export function factorTable(
  symbol: string,
  name: string,
  source: Source,
  rows: readonly (readonly [upTo: number, factor: number])[],
): FactorTable {
  return {
    source,
    rows: rows.map(([upTo, factor]) => ({ upTo, factor: tabulated(symbol, factor, "ratio", "", name, source) })),
  };
}

/** The factor for a count or a length; undefined beyond the table's end. */
export function lookUpFactor(table: FactorTable, value: number): Given | undefined {
  return table.rows.find((row) => value <= row.upTo * (1 + 1e-9))?.factor;
}

export interface CapacityFactors {
  readonly ambient?: Figure;
  readonly grouping?: Figure;
  readonly insulation?: Figure;
}

const capacity: Source = { title: "BS 7671:2018, Appendix 4", clause: "Iz = It · Ca · Cg · Ci", basis: "memory" };

const formulas = [
  "It",
  "It · Ca",
  "It · Cg",
  "It · Ca · Cg",
  "It · Ci",
  "It · Ca · Ci",
  "It · Cg · Ci",
  "It · Ca · Cg · Ci",
];

/** Current-carrying capacity as laid, A. A factor that is left out is 1: the caller says whether it was assumed. */
export function currentCapacity(rating: Figure, factors: CapacityFactors): Derived {
  const { ambient, grouping, insulation } = factors;
  const terms: Figure[] = [as("It", rating)];
  let value = rating.value;
  if (ambient) {
    terms.push(as("Ca", ambient));
    value *= ambient.value;
  }
  if (grouping) {
    terms.push(as("Cg", grouping));
    value *= grouping.value;
  }
  if (insulation) {
    terms.push(as("Ci", insulation));
    value *= insulation.value;
  }
  const formula = formulas[(ambient ? 1 : 0) + (grouping ? 2 : 0) + (insulation ? 4 : 0)]!;
  return derive("Iz", value, "current", "A", formula, terms, capacity);
}

/** The smallest size of a column (m²) whose capacity with the given factors reaches a current (A), or undefined. */
export function smallestSizeForCurrent(
  column: AmpacityColumn,
  factors: CapacityFactors,
  current: number,
): number | undefined {
  for (const [size, rating] of column.ratings) {
    if (currentCapacity(rating, factors).value >= current) return size * 1e-6;
  }
  return undefined;
}
