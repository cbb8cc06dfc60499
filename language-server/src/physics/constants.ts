import type { Source } from "./figure.js";

/** 0 °C in kelvin: exact, by the definition of the Celsius scale. */
export const zeroCelsius = 273.15;

/** Standard test conditions of a module: cell at 25 °C, 1000 W/m², air mass 1.5 (IEC 60904-3). */
export const standardCellTemperature = 25 + zeroCelsius;
export const standardIrradiance = 1000;

/** Boltzmann constant in J/K and elementary charge in C: exact since the SI of 2019. */
export const boltzmann = 1.380649e-23;
export const elementaryCharge = 1.602176634e-19;

export function celsius(degrees: number): number {
  return degrees + zeroCelsius;
}

/** Nothing but the rules of arithmetic and of series and parallel circuits. */
export const arithmetic: Source = { title: "arithmetic of series and parallel circuits", basis: "arithmetic" };
