import type { CableQuestion } from "./ampacity.js";
import { resistanceAtTemperature } from "./conductor.js";
import { type ConductorKind, nominalSize, standardSizes, tableResistance } from "./conductor-tables.js";
import { arithmetic } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive, tabulated } from "./make.js";

/**
 * Voltage drop of a.c. runs: and rise, which is the same sum with the energy going the other way. Per metre of run, all
 * live conductors counted; of three-phase runs it is the drop between lines.
 */
export interface DropRow {
  /** mV per ampere and metre: the resistive part, the reactive part, and both together. */
  readonly r: number;
  readonly x: number;
  readonly z: number;
}

/** One column of a printed table, ready to look up. The words are those of the cable's and the run's properties. */
export interface DropColumn extends Pick<CableQuestion, "insulation" | "loadedConductors"> {
  readonly types: readonly string[];
  readonly methods: readonly string[];
  readonly name: string;
  readonly source: Source;
  /** By nominal size in mm². */
  readonly rows: ReadonlyMap<number, DropRow>;
}

/** Ω per metre of run. */
export interface DropPerMetre {
  readonly r: Figure;
  readonly x: Figure;
  readonly z: Figure;
}

/** The column for a cable laid in a certain way, or undefined: then the drop is computed from its resistance. */
export function findDropColumn(columns: readonly DropColumn[], cable: CableQuestion): DropColumn | undefined {
  return columns.find(
    (column) =>
      column.insulation === cable.insulation &&
      column.loadedConductors === cable.loadedConductors &&
      column.types.includes(cable.type) &&
      column.methods.includes(cable.method),
  );
}

/** Drop per metre of a cross-section in m²; undefined for a size outside the table. */
export function tabulatedDrop(column: DropColumn, crossSection: number): DropPerMetre | undefined {
  const size = nominalSize(crossSection);
  const row = column.rows.get(size);
  if (!row) return undefined;
  const cell = (symbol: "r" | "x" | "z"): Figure =>
    tabulated(
      symbol,
      row[symbol] / 1000,
      "resistance-per-length",
      "mV/A/m",
      `${column.name}, ${size} mm²`,
      column.source,
    );
  return { r: cell("r"), x: cell("x"), z: cell("z") };
}

export interface ComputedDrop {
  readonly kind: ConductorKind;
  /** m². */
  readonly crossSection: number;
  /** Conductor temperature, K. */
  readonly temperature: Figure;
  /** Reactance of one conductor, Ω/m. */
  readonly reactance: Figure;
  readonly loadedConductors: 2 | 3;
}

/** Drop per metre from the conductor's resistance, where no table has it; undefined for a size without a resistance. */
export function computedDrop(cable: ComputedDrop): DropPerMetre | undefined {
  const at20 = tableResistance(cable.kind, cable.crossSection);
  if (!at20) return undefined;
  const conductor = as("rc", resistanceAtTemperature(at20, cable.temperature));
  const reactive = as("λ", cable.reactance);
  const two = cable.loadedConductors === 2;
  const factor = two ? 2 : Math.sqrt(3);
  const r = perMetre("r", factor * conductor.value, two ? "2 · rc" : "√3 · rc", [conductor]);
  const x = perMetre("x", factor * reactive.value, two ? "2 · λ" : "√3 · λ", [reactive]);
  const z = perMetre("z", Math.hypot(r.value, x.value), "√(r² + x²)", [r, x]);
  return { r, x, z };
}

function perMetre(symbol: string, value: number, formula: string, terms: readonly Figure[]): Derived {
  return derive(symbol, value, "resistance-per-length", "mV/A/m", formula, terms, arithmetic);
}

export interface AcRun {
  /** One way, m. */
  readonly length: Figure;
  /** Per line conductor, A. */
  readonly current: Figure;
  readonly perMetre: DropPerMetre;
  /** cos φ, a number up to 1. Without it the whole impedance counts, which no power factor exceeds. */
  readonly powerFactor?: Figure;
}

const part: Source = {
  title: "BS 7671:2018, Appendix 4",
  clause: "section 6.2, (cos φ · r + sin φ · x)",
  basis: "memory",
};

/** Voltage lost, or gained against the flow of energy, along a run, V. */
export function acRunDrop(run: AcRun): Derived {
  const { length, current, perMetre: each, powerFactor } = run;
  const terms = [as("L", length), as("I", current)];
  if (!powerFactor) {
    const value = each.z.value * length.value * current.value;
    return derive("ΔU", value, "voltage", "V", "z · L · I", [each.z, ...terms], arithmetic);
  }
  const cosine = powerFactor.value;
  const sine = Math.sqrt(Math.max(1 - cosine ** 2, 0));
  const value = (cosine * each.r.value + sine * each.x.value) * length.value * current.value;
  const formula = "(cosφ · r + √(1 − cosφ²) · x) · L · I";
  return derive("ΔU", value, "voltage", "V", formula, [as("cosφ", powerFactor), each.r, each.x, ...terms], part);
}

/** The part of a three-phase drop (V between lines) that falls between one line and neutral, V. */
export function phaseDrop(drop: Figure): Derived {
  return derive("ΔUph", drop.value / Math.sqrt(3), "voltage", "V", "ΔU / √3", [as("ΔU", drop)], arithmetic);
}

/**
 * A drop as a share of the nominal voltage, a ratio: of the voltage to neutral for single-phase runs, of the voltage
 * between lines for three-phase ones.
 */
export function shareOfVoltage(drop: Figure, nominal: Figure): Derived {
  const terms = [as("ΔU", drop), as("Un", nominal)];
  return derive("Δu", drop.value / nominal.value, "ratio", "%", "ΔU / Un", terms, arithmetic);
}

export interface AcSizeQuestion extends Omit<AcRun, "perMetre"> {
  /** What this run may lose, V. */
  readonly allowed: Figure;
  /** Drop per metre of a cross-section in m². */
  readonly perMetreOf: (crossSection: number) => DropPerMetre | undefined;
}

/** The smallest standard cross-section (m²) that keeps a run's drop within what it may lose; undefined if none does. */
export function smallestSizeForAcDrop(question: AcSizeQuestion): number | undefined {
  const { allowed, perMetreOf, ...run } = question;
  for (const size of standardSizes) {
    const each = perMetreOf(size * 1e-6);
    if (each && acRunDrop({ ...run, perMetre: each }).value <= allowed.value) return size * 1e-6;
  }
  return undefined;
}
