import type { Figure } from "./figure.js";
import type { DataSheet } from "./single-diode-fit.js";

/** The figures of a module's data sheet; coefficients relative (1/K) or absolute (V/K, A/K). */
export interface ModuleFigures {
  readonly openCircuitVoltage: Figure;
  readonly shortCircuitCurrent: Figure;
  readonly voltageAtMaxPower: Figure;
  readonly currentAtMaxPower: Figure;
  readonly openCircuitVoltageCoefficient: Figure;
  readonly shortCircuitCurrentCoefficient: Figure;
}

/** What `fitModule` asks for: plain numbers, coefficients in V/K and A/K. */
export function dataSheetOf(module: ModuleFigures): DataSheet {
  const { openCircuitVoltage, shortCircuitCurrent } = module;
  return {
    openCircuitVoltage: openCircuitVoltage.value,
    shortCircuitCurrent: shortCircuitCurrent.value,
    voltageAtMaxPower: module.voltageAtMaxPower.value,
    currentAtMaxPower: module.currentAtMaxPower.value,
    voltageCoefficient: absolute(module.openCircuitVoltageCoefficient, openCircuitVoltage),
    currentCoefficient: absolute(module.shortCircuitCurrentCoefficient, shortCircuitCurrent),
  };
}

function absolute(coefficient: Figure, reference: Figure): number {
  return coefficient.dimension === "ratio-per-kelvin" ? coefficient.value * reference.value : coefficient.value;
}
