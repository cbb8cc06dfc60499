import { arithmetic, standardCellTemperature } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Currents of strings: maximum short-circuit current, sums of parallel strings, reverse current. All in A. */

export interface ShortCircuitInputs {
  /** Isc of one module at standard test conditions. */
  readonly current: Figure;
  /** K_I of the rule set. */
  readonly factor: Figure;
  /** α (1/K or A/K) with the hottest cell (K): both or neither; the factor of the standard covers heat by itself. */
  readonly coefficient?: Figure;
  readonly hottestCell?: Figure;
  /** Declared rear-side gain of a bifacial module in this place, a ratio: 0.1 for ten per cent more. */
  readonly bifacialGain?: Figure;
}

const factorSource: Source = {
  title: "IEC 62548",
  clause: "maximum short-circuit current, K_I",
  basis: "read",
};

/**
 * Maximum short-circuit current of a string, A. The published treatment of bifacial modules could not be read, so a
 * rear-side gain only enters where the design declares one.
 */
export function maximumShortCircuitCurrent(inputs: ShortCircuitInputs): Derived {
  const { current, factor, coefficient, hottestCell, bifacialGain } = inputs;
  const terms: Figure[] = [as("K_I", factor)];
  let value = current.value;
  let formula = "K_I · Isc";
  if (coefficient && hottestCell) {
    const hot = shortCircuitCurrentAt(current, coefficient, hottestCell);
    terms.push(hot);
    value = hot.value;
    formula = "K_I · Isc,hot";
  } else {
    terms.push(as("Isc", current));
  }
  if (bifacialGain) {
    terms.push(as("b", bifacialGain));
    value *= 1 + bifacialGain.value;
    formula = formula === "K_I · Isc" ? "K_I · Isc · (1 + b)" : "K_I · Isc,hot · (1 + b)";
  }
  return derive("Isc,max", value * factor.value, "current", "A", formula, terms, factorSource);
}

/** Short-circuit current at 1000 W/m² and a cell temperature, A; α relative (1/K) or absolute (A/K). */
export function shortCircuitCurrentAt(current: Figure, coefficient: Figure, cell: Figure): Derived {
  const rise = cell.value - standardCellTemperature;
  const isAbsolute = coefficient.dimension === "current-per-kelvin";
  const value = isAbsolute ? current.value + coefficient.value * rise : current.value * (1 + coefficient.value * rise);
  const formula = isAbsolute ? "Isc + α · (T − 25 °C)" : "Isc · (1 + α · (T − 25 °C))";
  const terms = [as("Isc", current), as("α", coefficient), as("T", cell)];
  return derive("Isc,hot", value, "current", "A", formula, terms, arithmetic);
}

/** Sum of the currents of strings that meet on one conductor or input, A. */
export function parallelCurrent(currents: readonly Figure[], symbol = "I"): Derived {
  let value = 0;
  for (const current of currents) value += current.value;
  const terms = currents.map((current) => as("I", current));
  return derive(symbol, value, "current", "A", "Σ I", terms, arithmetic);
}

/**
 * Current that the other strings can drive backwards through one faulty string, A: (Np − 1) · Isc. `current` is one
 * string's Isc or Isc,max, as the rule set's fuse rule asks; `strings` is the number of strings in parallel.
 */
export function reverseCurrent(strings: Figure, current: Figure): Derived {
  const value = Math.max(strings.value - 1, 0) * current.value;
  const terms = [as("Np", strings), as("I", current)];
  return derive("Irev", value, "current", "A", "(Np − 1) · I", terms, arithmetic);
}
