import { standardCellTemperature, standardIrradiance } from "./constants.js";
import type { Derived, Figure, Source } from "./figure.js";
import { as, assumed, derive } from "./make.js";
import { type ModuleModel, parametersAt } from "./module-model.js";
import { openCircuitVoltage, shortCircuitCurrent } from "./single-diode.js";
import { openCircuitVoltageAt, type SeriesString } from "./string-voltage.js";

/** What a meter should read on a string in the light and at the cell temperature of the moment. */

const translation: Source = {
  title: "IEC 60891",
  clause: "translation of short-circuit current by irradiance and temperature",
  basis: "memory",
};
const diode: Source = {
  title: "De Soto, Klein and Beckman, Solar Energy 80 (2006) 78",
  clause: "single-diode model from data-sheet values",
  basis: "memory",
};

/** Expected Uoc by the temperature coefficient alone, V. In weak light it reads high: see `modelledVoltage`. */
export function expectedVoltage(string: SeriesString, coefficient: Figure, cell: Figure): Derived {
  return as("Uoc,exp", openCircuitVoltageAt(string, coefficient, cell));
}

const fullSun = assumed(
  "G",
  standardIrradiance,
  "irradiance",
  "W/m2",
  "irradiance not stated: full sun, in which a string reads highest",
);

/** The same where no irradiance was measured: full sun is an assumption, and listed as one. */
export function expectedVoltageInFullSun(string: SeriesString, coefficient: Figure, cell: Figure): Derived {
  const { value, dimension, unit, formula, terms, source } = expectedVoltage(string, coefficient, cell);
  return derive("Uoc,exp", value, dimension, unit, `${formula}, at G`, [...terms, fullSun], source);
}

/** Expected Isc, A: in proportion to the irradiance (W/m²), with the temperature coefficient (1/K or A/K). */
export function expectedCurrent(current: Figure, coefficient: Figure, irradiance: Figure, cell: Figure): Derived {
  const rise = cell.value - standardCellTemperature;
  const isAbsolute = coefficient.dimension === "current-per-kelvin";
  const warm = isAbsolute ? current.value + coefficient.value * rise : current.value * (1 + coefficient.value * rise);
  const value = (warm * irradiance.value) / standardIrradiance;
  const formula = isAbsolute
    ? "(Isc + α · (T − 25 °C)) · G / 1000 W/m²"
    : "Isc · (1 + α · (T − 25 °C)) · G / 1000 W/m²";
  const terms = [as("Isc", current), as("α", coefficient), as("T", cell), as("G", irradiance)];
  return derive("Isc,exp", value, "current", "A", formula, terms, translation);
}

/** Expected Uoc of n modules by the single-diode model, V: the weaker the light, the lower. */
export function modelledVoltage(modules: Figure, model: ModuleModel, irradiance: Figure, cell: Figure): Derived {
  const value = modules.value * openCircuitVoltage(parametersAt(model, irradiance.value, cell.value));
  const terms = [as("n", modules), as("G", irradiance), as("T", cell)];
  return derive("Uoc,exp", value, "voltage", "V", "n · Uoc(G; T)", terms, diode);
}

const rear: Source = { title: "gain of the rear side that the design declares", basis: "arithmetic" };

/** The most that a bifacial module reads, A: with the declared gain from light on its rear (a ratio). */
export function rearLight(current: Figure, gain: Figure): Derived {
  const terms = [as("I", current), as("b", gain)];
  return derive("Isc,exp", current.value * (1 + gain.value), "current", "A", "I · (1 + b)", terms, rear);
}

/** Expected Isc by the single-diode model, A. */
export function modelledCurrent(model: ModuleModel, irradiance: Figure, cell: Figure): Derived {
  const value = shortCircuitCurrent(parametersAt(model, irradiance.value, cell.value));
  return derive("Isc,exp", value, "current", "A", "Isc(G; T)", [as("G", irradiance), as("T", cell)], diode);
}

const comparison: Source = { title: "arithmetic of a relative difference", basis: "arithmetic" };

/** How far a reading is from what was expected, a ratio; negative for a reading too low. */
export function readingDifference(reading: Figure, expected: Figure): Derived {
  const terms = [as("X", reading), as("Xexp", expected)];
  return derive("δ", reading.value / expected.value - 1, "ratio", "%", "X / Xexp − 1", terms, comparison);
}

/** How near to a whole number of modules a voltage must be to say that it fits it. */
const wholeEnough = 0.25;

/**
 * The number of modules that a voltage reading would fit, if it is near a whole number and not the string's own:
 * 395 V where eleven modules should give 434.3 V is ten modules. Undefined where it fits none.
 */
export function modulesThatFit(reading: number, expected: number, modules: number): number | undefined {
  const fitting = (reading / expected) * modules;
  const whole = Math.round(fitting);
  return whole !== modules && Math.abs(fitting - whole) <= wholeEnough ? whole : undefined;
}

const insulation: Source = { title: "IEC 62446-1", clause: "system voltage of the insulation test", basis: "read" };

/** System voltage that decides the insulation test voltage, V: the string's Uoc at standard test conditions times a factor. */
export function insulationSystemVoltage(string: SeriesString, factor: Figure): Derived {
  const value = factor.value * string.modules.value * string.voltage.value;
  const terms = [as("f", factor), as("n", string.modules), as("Uoc", string.voltage)];
  return derive("Usys", value, "voltage", "V", "f · n · Uoc", terms, insulation);
}
