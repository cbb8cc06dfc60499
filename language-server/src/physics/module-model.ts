import { standardCellTemperature, standardIrradiance } from "./constants.js";
import type { DiodeParameters } from "./single-diode.js";

/**
 * How the five parameters of a module change with light and temperature.
 *
 * De Soto, Klein and Beckman, "Improvement and validation of a model for photovoltaic array performance", Solar Energy
 * 80 (2006) 78–88: the equations are known from memory; the tests hold the results against published figures.
 */
export interface ModuleModel {
  /** At standard test conditions. */
  readonly reference: DiodeParameters;
  /** Change of the short-circuit current, A/K. */
  readonly currentCoefficient: number;
}

/** Band gap of crystalline silicon at 25 °C in eV, and its relative change per kelvin. */
const bandGap = 1.121;
const bandGapCoefficient = -0.0002677;
/** Boltzmann constant in eV/K. */
const boltzmann = 8.617333262e-5;

/** The saturation current's factor from 25 °C to a cell temperature in K. */
export function saturationFactor(cell: number): number {
  const reference = standardCellTemperature;
  const gap = bandGap * (1 + bandGapCoefficient * (cell - reference));
  return (cell / reference) ** 3 * Math.exp((bandGap / reference - gap / cell) / boltzmann);
}

/** Parameters at an irradiance in the plane of the module (W/m²) and a cell temperature (K). */
export function parametersAt(model: ModuleModel, irradiance: number, cell: number): DiodeParameters {
  const { reference, currentCoefficient } = model;
  const light = irradiance / standardIrradiance;
  return {
    photocurrent: light * (reference.photocurrent + currentCoefficient * (cell - standardCellTemperature)),
    saturationCurrent: reference.saturationCurrent * saturationFactor(cell),
    seriesResistance: reference.seriesResistance,
    shuntResistance: light > 0 ? reference.shuntResistance / light : Number.POSITIVE_INFINITY,
    idealityVoltage: (reference.idealityVoltage * cell) / standardCellTemperature,
  };
}
