import { type ColdFactors, coldFactor } from "./cold-factors.js";
import { standardCellTemperature } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/**
 * Voltages of a series string at a cell temperature.
 *
 * Everywhere: `modules` is n (a number), voltages are per module at standard test conditions in V, coefficients are
 * relative (1/K, dimension ratio-per-kelvin) or absolute (V/K, voltage-per-kelvin), temperatures are cell temperatures
 * in K. At dawn a cell is as cold as the air, so the site's lowest air temperature is the lowest cell temperature.
 */
export interface SeriesString {
  readonly modules: Figure;
  readonly voltage: Figure;
}

const linear: Source = {
  title: "IEC 62548",
  clause: "maximum voltage of a PV array by the module's temperature coefficient",
  basis: "read",
};

interface Form {
  readonly result: string;
  readonly voltage: string;
  readonly coefficient: string;
  readonly temperature: string;
  readonly relative: string;
  readonly absolute: string;
}

function form(result: string, voltage: string, coefficient: string, temperature: string): Form {
  return {
    result,
    voltage,
    coefficient,
    temperature,
    relative: `n · ${voltage} · (1 + ${coefficient} · (${temperature} − 25 °C))`,
    absolute: `n · (${voltage} + ${coefficient} · (${temperature} − 25 °C))`,
  };
}

const coldOpen = form("Uoc,max", "Uoc", "β", "Tmin");
const anyOpen = form("Uoc(T)", "Uoc", "β", "T");
const coldPower = form("Ump,cold", "Ump", "βmp", "Tmin");
const hotPower = form("Ump,hot", "Ump", "βmp", "Tmax");

function atTemperature(string: SeriesString, coefficient: Figure, temperature: Figure, shape: Form): Derived {
  const { modules, voltage } = string;
  const rise = temperature.value - standardCellTemperature;
  const isAbsolute = coefficient.dimension === "voltage-per-kelvin";
  const perModule = isAbsolute
    ? voltage.value + coefficient.value * rise
    : voltage.value * (1 + coefficient.value * rise);
  const terms = [
    as("n", modules),
    as(shape.voltage, voltage),
    as(shape.coefficient, coefficient),
    as(shape.temperature, temperature),
  ];
  const formula = isAbsolute ? shape.absolute : shape.relative;
  return derive(shape.result, modules.value * perModule, "voltage", "V", formula, terms, linear);
}

export interface ColdString extends SeriesString {
  readonly coefficient?: Figure;
  readonly lowestTemperature?: Figure;
}

const tabulated = "n · Uoc · k";

/**
 * Highest open-circuit voltage of a string, V. By the coefficient where it and the temperature are known; else by the
 * rule set's table of factors; else by its factor for an unknown temperature. The factor is then an assumption among
 * the terms. Undefined only where the table ends (colder than −40 °C without a coefficient).
 */
export function coldOpenCircuitVoltage(string: ColdString, factors: ColdFactors): Derived | undefined {
  const { modules, voltage, coefficient, lowestTemperature } = string;
  if (coefficient && lowestTemperature) return atTemperature(string, coefficient, lowestTemperature, coldOpen);
  const factor = lowestTemperature ? coldFactor(factors, lowestTemperature.value) : factors.temperatureUnknown;
  if (!factor) return undefined;
  const terms = [as("n", modules), as("Uoc", voltage), as("k", factor)];
  const value = modules.value * voltage.value * factor.value;
  return derive("Uoc,max", value, "voltage", "V", tabulated, terms, factor.origin.source, factor.origin.text);
}

/** Open-circuit voltage at any cell temperature, V. */
export function openCircuitVoltageAt(string: SeriesString, coefficient: Figure, cell: Figure): Derived {
  return atTemperature(string, coefficient, cell, anyOpen);
}

/** Voltage at maximum power with the hottest cells, V; coefficient from `maxPowerCoefficient`. */
export function hotMaxPowerVoltage(string: SeriesString, coefficient: Figure, hottestCell: Figure): Derived {
  return atTemperature(string, coefficient, hottestCell, hotPower);
}

/** Voltage at maximum power with the coldest cells, V. */
export function coldMaxPowerVoltage(string: SeriesString, coefficient: Figure, lowestTemperature: Figure): Derived {
  return atTemperature(string, coefficient, lowestTemperature, coldPower);
}

const standard: Source = { title: "standard test conditions, IEC 60904-3", basis: "memory" };

/** Voltage at maximum power of a string at standard test conditions, V: the reference of a voltage drop in per cent. */
export function standardMaxPowerVoltage(string: SeriesString): Derived {
  const terms = [as("n", string.modules), as("Ump", string.voltage)];
  return derive("Ump,string", string.modules.value * string.voltage.value, "voltage", "V", "n · Ump", terms, standard);
}
