import { zeroCelsius } from "./constants.js";
import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive, tabulated } from "./make.js";

/** Earth fault loop impedance, and the resistance of what carries the fault back. */

const loop: Source = { title: "BS 7671:2018", clause: "Zs = Ze + (R1 + R2)", basis: "read" };

export interface LoopRun {
  /** One way, m. */
  readonly length: Figure;
  /** Line and protective conductor at the temperature that is wanted, Ω/m. */
  readonly line: Figure;
  readonly protective: Figure;
}

/** Resistance of line and protective conductor of a run, Ω. */
export function runLoop(run: LoopRun): Derived {
  const { length, line, protective } = run;
  const value = length.value * (line.value + protective.value);
  const terms = [as("L", length), as("r1", line), as("r2", protective)];
  return derive("(R1 + R2)", value, "resistance", "ohm", "L · (r1 + r2)", terms, loop);
}

/**
 * Earth fault loop impedance Zs (Ω) behind several runs, from that outside the installation and `runLoop` of each run.
 * Impedances are added as numbers, which never gives less than their true sum.
 */
export function earthLoop(external: Figure, runs: readonly Figure[]): Derived {
  let value = external.value;
  for (const run of runs) value += run.value;
  const terms = [as("Ze", external), ...runs.map((run) => as("(R1 + R2)", run))];
  return derive("Zs", value, "resistance", "ohm", runs.length === 0 ? "Ze" : "Ze + Σ (R1 + R2)", terms, loop);
}

/** Resistance of line and protective conductors of several runs together (Ω): the loop without a supply. */
export function runLoops(runs: readonly Figure[]): Derived {
  let value = 0;
  for (const run of runs) value += run.value;
  const terms = runs.map((run) => as("(R1 + R2)", run));
  return derive("Zs", value, "resistance", "ohm", runs.length === 0 ? "0" : "Σ (R1 + R2)", terms, loop);
}

/** Steel wire armour at 20 °C: its resistivity, Ω·m, and the constant of its rise with temperature, K. */
const steel = { resistivity: 13.8e-8, constant: 202 };
const steelSource: Source = { title: "IEC 60949", clause: "constants of steel", basis: "memory" };

/** Resistance of steel wire armour per metre (Ω/m) at a temperature (K), from its cross-section (m²). */
export function armourResistance(area: Figure, temperature: Figure): Derived {
  const { resistivity, constant } = steel;
  const factor = (constant + temperature.value - zeroCelsius) / (constant + 20);
  const terms = [steelAt20, as("S", area), as("Ta", temperature)];
  return derive(
    "r2",
    (resistivity / area.value) * factor,
    "resistance-per-length",
    "ohm/km",
    "ρ20 · 1 mm² / S · (202 °C + Ta) / (202 °C + 20 °C)",
    terms,
    steelSource,
  );
}

/** As the resistance of a metre of wire of one square millimetre, which is how the trade carries it. */
const steelAt20: Given = tabulated(
  "ρ20",
  steel.resistivity / 1e-6,
  "resistance-per-length",
  "ohm/m",
  "steel wire of 1 mm² at 20 °C",
  steelSource,
);
