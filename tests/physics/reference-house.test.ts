import { expect, test } from "vitest";
import { celsius } from "../../language-server/src/physics/constants.js";
import { dataSheetOf } from "../../language-server/src/physics/data-sheet.js";
import {
  expectedCurrent,
  expectedVoltage,
  insulationSystemVoltage,
  modelledCurrent,
  modelledVoltage,
  modulesThatFit,
  readingDifference,
} from "../../language-server/src/physics/expected-reading.js";
import {
  maximumShortCircuitCurrent,
  parallelCurrent,
  reverseCurrent,
} from "../../language-server/src/physics/short-circuit.js";
import { fitModule } from "../../language-server/src/physics/single-diode-fit.js";
import { largestCount, smallestCount, temperatureAtLimit } from "../../language-server/src/physics/string-length.js";
import {
  coldMaxPowerVoltage,
  coldOpenCircuitVoltage,
  hotMaxPowerVoltage,
  standardMaxPowerVoltage,
} from "../../language-server/src/physics/string-voltage.js";
import { relativeDrop, runDrop } from "../../language-server/src/physics/voltage-drop.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { insulationRow } from "../../language-server/src/rules/rule-set.js";
import {
  amperes,
  amperesPerKelvin,
  celsiusDegrees,
  count,
  metres,
  ohmsPerKilometre,
  percentPerKelvin,
  volts,
  voltsPerKelvin,
  wattsPerSquareMetre,
} from "./figures.js";

/**
 * A house used for questions and answers of the trade: an invented module of 430 W, string A of eleven, string B of
 * six, −15 °C to cells at 70 °C, 500 V and 120 to 430 V at the inverter. The expected figures were worked apart from
 * this program, by hand and script.
 */
const uoc = volts(38.8);
const ump = volts(32.6, "Ump");
const isc = amperes(13.9);
const beta = percentPerKelvin(-0.25);
const betaMp = percentPerKelvin(-0.29, "βmp");
const alpha = percentPerKelvin(0.045, "α");
const coldest = celsiusDegrees(-15, "Tmin");
const hottest = celsiusDegrees(70, "Tmax");

const coldOf = (modules: number) =>
  coldOpenCircuitVoltage(
    { modules: count(modules), voltage: uoc, coefficient: beta, lowestTemperature: coldest },
    gb.coldFactors,
  )!;

test("cold Uoc of 11, 6 and 12 modules: 469.5, 256.1 and 512.2 V", () => {
  expect(coldOf(11).value).toBeCloseTo(469.5, 1);
  expect(coldOf(6).value).toBeCloseTo(256.1, 1);
  expect(coldOf(12).value).toBeCloseTo(512.2, 1);
});

test("eleven is the most under 500 V, and twelve pass it below −4.6 °C", () => {
  expect(largestCount(volts(500), coldOf(1)).value).toBe(11);
  const passed = temperatureAtLimit({ modules: count(12), voltage: uoc }, beta, volts(500))!;
  expect(passed.value - celsius(0)).toBeCloseTo(-4.6, 1);
});

test("Ump of 11 and 6 modules at 70 °C is 311.8 and 170 V; five is the fewest over 120 V; twelve are 436.6 V cold", () => {
  const hot = (modules: number) => hotMaxPowerVoltage({ modules: count(modules), voltage: ump }, betaMp, hottest);
  expect(hot(11).value).toBeCloseTo(311.8, 1);
  expect(hot(6).value).toBeCloseTo(170, 0);
  expect(hot(3).value).toBeCloseTo(85, 0);
  expect(smallestCount(volts(120), hot(1)).value).toBe(5);
  const cold = coldMaxPowerVoltage({ modules: count(12), voltage: ump }, betaMp, coldest);
  expect(cold.value).toBeCloseTo(436.6, 1);
});

test("1.25 · Isc is 17.4 A, two strings give 27.8 A, two good strings drive 34.8 A into a third", () => {
  const highest = maximumShortCircuitCurrent({ current: isc, factor: gb.limits.shortCircuitFactor });
  expect(highest.value).toBeCloseTo(17.375, 6);
  expect(parallelCurrent([isc, isc]).value).toBeCloseTo(27.8, 6);
  expect(reverseCurrent(count(3, "Np"), highest).value).toBeCloseTo(34.75, 6);
});

test("4 mm² drops 2.42 V or 0.67 % on A and 3.23 V or 1.65 % on B, with the conductors at 20 °C", () => {
  const drop = (length: number) =>
    runDrop({ length: metres(length), perMetre: ohmsPerKilometre(5.09), current: amperes(13.2, "Imp") });
  const share = (length: number, modules: number) =>
    relativeDrop(drop(length), standardMaxPowerVoltage({ modules: count(modules), voltage: ump })).value;
  expect(drop(18).value).toBeCloseTo(2.42, 2);
  expect(drop(24).value).toBeCloseTo(3.23, 2);
  expect(100 * share(18, 11)).toBeCloseTo(0.67, 2);
  expect(100 * share(24, 6)).toBeCloseTo(1.65, 2);
});

test("readings: 434.3 and 236.9 V at 18 °C, 9.06 A at 650 W/m² and 30 °C", () => {
  const at18 = celsiusDegrees(18);
  expect(expectedVoltage({ modules: count(11), voltage: uoc }, beta, at18).value).toBeCloseTo(434.3, 1);
  expect(expectedVoltage({ modules: count(6), voltage: uoc }, beta, at18).value).toBeCloseTo(236.9, 1);
  const current = expectedCurrent(isc, alpha, wattsPerSquareMetre(650), celsiusDegrees(30));
  expect(current.value).toBeCloseTo(9.06, 2);
});

test("395 V where 434.3 V are due is 9.1 % short and fits ten modules", () => {
  const expected = expectedVoltage({ modules: count(11), voltage: uoc }, beta, celsiusDegrees(18));
  expect(100 * readingDifference(volts(395), expected).value).toBeCloseTo(-9.05, 1);
  expect(modulesThatFit(395, expected.value, 11)).toBe(10);
});

test("a reading that is right, or that fits no whole number, names no number of modules", () => {
  expect(modulesThatFit(434, 434.3, 11)).toBeUndefined();
  expect(modulesThatFit(415, 434.3, 11)).toBeUndefined();
  expect(modulesThatFit(474, 434.3, 11)).toBe(12);
});

test("insulation is tested at 1000 V for A and 500 V for B, with 1 MΩ at least", () => {
  const rows = [11, 6, 2].map((modules) => {
    const system = insulationSystemVoltage({ modules: count(modules), voltage: uoc }, gb.insulationVoltageFactor);
    const row = insulationRow(gb, system.value)!;
    return [system.value, row.testVoltage.value, row.leastResistance.value];
  });
  expect(rows[0]![0]).toBeCloseTo(533.5, 6);
  expect(rows.map(([, voltage]) => voltage)).toEqual([1000, 500, 250]);
  expect(rows.map(([, , resistance]) => resistance)).toEqual([1e6, 1e6, 0.5e6]);
});

test("rows of the insulation test meet at 120, 500 and 1000 V", () => {
  const voltages = [119.9, 120, 500, 500.1, 1000, 1000.1].map((each) => insulationRow(gb, each)!.testVoltage.value);
  expect(voltages).toEqual([250, 500, 500, 1000, 1000, 1500]);
});

test("the single-diode model reads less voltage in weak light and the same current as the proportion", () => {
  const model = fitModule(
    dataSheetOf({
      openCircuitVoltage: uoc,
      shortCircuitCurrent: isc,
      voltageAtMaxPower: ump,
      currentAtMaxPower: amperes(13.2, "Imp"),
      openCircuitVoltageCoefficient: beta,
      shortCircuitCurrentCoefficient: alpha,
    }),
  )!;
  const light = wattsPerSquareMetre(650);
  const cell = celsiusDegrees(30);
  const modelled = modelledVoltage(count(11), model, light, cell).value;
  const line = expectedVoltage({ modules: count(11), voltage: uoc }, beta, cell).value;
  expect(modelled / line).toBeLessThan(1);
  expect(modelled / line).toBeGreaterThan(0.97);
  const proportion = expectedCurrent(isc, alpha, light, cell).value;
  expect(modelledCurrent(model, light, cell).value / proportion).toBeCloseTo(1, 3);
});

test("a data sheet with absolute coefficients is the same module", () => {
  const figures = {
    openCircuitVoltage: uoc,
    shortCircuitCurrent: isc,
    voltageAtMaxPower: ump,
    currentAtMaxPower: amperes(13.2, "Imp"),
  };
  const relative = dataSheetOf({
    ...figures,
    openCircuitVoltageCoefficient: beta,
    shortCircuitCurrentCoefficient: alpha,
  });
  const absolute = dataSheetOf({
    ...figures,
    openCircuitVoltageCoefficient: voltsPerKelvin(-0.097),
    shortCircuitCurrentCoefficient: amperesPerKelvin(0.006255),
  });
  expect(absolute.voltageCoefficient).toBeCloseTo(relative.voltageCoefficient, 12);
  expect(absolute.currentCoefficient).toBeCloseTo(relative.currentCoefficient, 12);
});
