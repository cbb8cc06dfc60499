import { loopResistance, resistanceAtTemperature } from "./conductor.js";
import { type ConductorKind, nominalSize, standardSizes, tableResistance } from "./conductor-tables.js";
import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** Voltage drop and loss along a path of two-wire runs, each with its own current. */
export interface LoadedRun {
  /** One way, m. */
  readonly length: Figure;
  /** One conductor at its working temperature, Ω/m. */
  readonly perMetre: Figure;
  /** Working current in this run, A: of one string, or of all that share it. */
  readonly current: Figure;
}

/** Voltage lost in one run, there and back, V. */
export function runDrop(run: LoadedRun): Derived {
  const { length, perMetre, current } = run;
  const value = 2 * length.value * perMetre.value * current.value;
  const terms = [as("L", length), as("r", perMetre), as("I", current)];
  return derive("ΔU", value, "voltage", "V", "2 · L · r · I", terms, arithmetic);
}

/** Power lost in one run, W. */
export function runLoss(run: LoadedRun): Derived {
  const resistance = loopResistance(run.length, run.perMetre);
  const value = resistance.value * run.current.value ** 2;
  return derive("P", value, "power", "W", "R · I²", [resistance, as("I", run.current)], arithmetic);
}

/** Voltage lost from end to end of a path, V. */
export function pathDrop(drops: readonly Figure[]): Derived {
  let value = 0;
  for (const drop of drops) value += drop.value;
  const terms = drops.map((drop) => as("ΔU", drop));
  return derive("ΔU,path", value, "voltage", "V", "Σ ΔU", terms, arithmetic);
}

/** Power lost in several runs, W. A run that several strings share is to be counted once. */
export function totalLoss(losses: readonly Figure[]): Derived {
  let value = 0;
  for (const loss of losses) value += loss.value;
  const terms = losses.map((loss) => as("P", loss));
  return derive("P,path", value, "power", "W", "Σ P", terms, arithmetic);
}

/** A drop as a share of the voltage it is lost from (the string's Ump at standard test conditions), a ratio. */
export function relativeDrop(drop: Figure, voltage: Figure): Derived {
  const terms = [as("ΔU,path", drop), as("Ump,string", voltage)];
  return derive("Δu", drop.value / voltage.value, "ratio", "%", "ΔU,path / Ump,string", terms, arithmetic);
}

export interface SizeQuestion {
  readonly length: Figure;
  readonly current: Figure;
  readonly kind: ConductorKind;
  readonly conductorTemperature: Figure;
  /** What this run may lose, V: the path's limit less what its other runs lose. */
  readonly allowed: Figure;
}

/** The smallest standard cross-section (m²) that keeps a run's drop within what it may lose; undefined if none does. */
export function smallestSizeForDrop(question: SizeQuestion): number | undefined {
  const { length, current, kind, conductorTemperature, allowed } = question;
  for (const size of standardSizes) {
    const at20 = tableResistance(kind, size * 1e-6);
    if (!at20) continue;
    const drop = runDrop({ length, current, perMetre: resistanceAtTemperature(at20, conductorTemperature) });
    if (drop.value <= allowed.value) return size * 1e-6;
  }
  return undefined;
}

/** The next larger standard cross-section in m², or undefined at the end of the table. */
export function nextSize(crossSection: number): number | undefined {
  const size = standardSizes.find((each) => each > nominalSize(crossSection));
  return size === undefined ? undefined : size * 1e-6;
}

/** Longest one-way length (m) of a run whose drop stays within what it may lose (V). */
export function longestRun(run: Omit<LoadedRun, "length">, allowed: Figure): Derived {
  const value = allowed.value / (2 * run.perMetre.value * run.current.value);
  const terms = [as("ΔUmax", allowed), as("r", run.perMetre), as("I", run.current)];
  return derive("Lmax", value, "length", "m", "ΔUmax / (2 · r · I)", terms, arithmetic);
}
