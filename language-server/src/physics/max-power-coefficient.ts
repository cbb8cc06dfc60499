import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** What a data sheet may say about how a module changes with temperature; all optional. */
export interface TemperatureCoefficients {
  /** Of the voltage at maximum power: 1/K or V/K. */
  readonly maxPowerVoltage?: Figure;
  /** Of the maximum power, γ: 1/K. */
  readonly power?: Figure;
  /** Of the short-circuit current, α: 1/K or A/K. */
  readonly shortCircuitCurrent?: Figure;
}

const product: Source = {
  title: "P = U · I differentiated by temperature, Imp taken to change like Isc",
  basis: "arithmetic",
};
const note =
  "temperature coefficient of Ump not stated: taken as power minus current coefficient, which errs towards a lower voltage in heat";

/**
 * Coefficient of the voltage at maximum power: the data sheet's own, else γ − α (1/K). `shortCircuitCurrentAtStc` (A)
 * is needed only to make an absolute α relative. Undefined where the data sheet gives too little; a caller then names
 * the missing property and does not guess.
 */
export function maxPowerCoefficient(
  coefficients: TemperatureCoefficients,
  shortCircuitCurrentAtStc?: Figure,
): Figure | undefined {
  const { maxPowerVoltage, power, shortCircuitCurrent } = coefficients;
  if (maxPowerVoltage) return maxPowerVoltage;
  if (!power || !shortCircuitCurrent) return undefined;
  const alpha = relativeCoefficient(shortCircuitCurrent, shortCircuitCurrentAtStc);
  if (!alpha) return undefined;
  const terms = [as("γ", power), as("α", alpha)];
  return derive("βmp", power.value - alpha.value, "ratio-per-kelvin", "%/K", "γ − α", terms, product, note);
}

/** A current coefficient as 1/K; undefined where it is absolute and the reference current is not known. */
export function relativeCoefficient(coefficient: Figure, reference: Figure | undefined): Figure | undefined {
  if (coefficient.dimension === "ratio-per-kelvin") return coefficient;
  if (!reference || reference.value === 0) return undefined;
  const terms = [as("αabs", coefficient), as("Isc", reference)];
  const value = coefficient.value / reference.value;
  return derive("α", value, "ratio-per-kelvin", "%/K", "αabs / Isc", terms, product) satisfies Derived;
}
