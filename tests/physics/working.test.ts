import { expect, test } from "vitest";
import { currentCapacity } from "../../language-server/src/physics/ampacity.js";
import { hottestCellByMounting } from "../../language-server/src/physics/cell-temperature.js";
import { resistanceAtTemperature } from "../../language-server/src/physics/conductor.js";
import { tableResistance } from "../../language-server/src/physics/conductor-tables.js";
import { formatNumber, formatValue } from "../../language-server/src/physics/display.js";
import { assumptions, type Derived } from "../../language-server/src/physics/figure.js";
import { groupingFactor } from "../../language-server/src/physics/grouping.js";
import { derive, stated } from "../../language-server/src/physics/make.js";
import { maxPowerCoefficient } from "../../language-server/src/physics/max-power-coefficient.js";
import { parallelCurrent, reverseCurrent } from "../../language-server/src/physics/short-circuit.js";
import { temperatureAtLimit } from "../../language-server/src/physics/string-length.js";
import { coldOpenCircuitVoltage, hotMaxPowerVoltage } from "../../language-server/src/physics/string-voltage.js";
import { pathDrop, relativeDrop, runDrop } from "../../language-server/src/physics/voltage-drop.js";
import {
  formatApart,
  formatFigure,
  sourceText,
  workingLine,
  workingLines,
} from "../../language-server/src/physics/working.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { amperes, celsiusDegrees, count, metres, percentPerKelvin, ratio, volts } from "./figures.js";

const string = { modules: count(11), voltage: volts(38.9) };
const coefficient = percentPerKelvin(-0.25);
const lowestTemperature = celsiusDegrees(-10, "Tmin");

test("a cold voltage reads as the sum a designer writes by hand", () => {
  const cold = coldOpenCircuitVoltage({ ...string, coefficient, lowestTemperature }, gb.coldFactors)!;
  expect(workingLine(cold)).toBe(
    "Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 11 · 38.9 V · (1 + (−0.25 %/K) · (−10 °C − 25 °C)) = 465.3 V",
  );
  expect(assumptions(cold)).toEqual([]);
});

test("an unknown coefficient is an assumption with its reason and source", () => {
  const cold = coldOpenCircuitVoltage({ ...string, lowestTemperature }, gb.coldFactors)!;
  expect(workingLine(cold)).toBe("Uoc,max = n · Uoc · k = 11 · 38.9 V · 1.14 = 487.8 V");
  expect(assumptions(cold).map(({ origin }) => [origin.text, origin.source?.title])).toEqual([
    [
      "temperature coefficient of Uoc not stated: factor of crystalline silicon for a lowest temperature down to −10 °C",
      "UTE C 15-712-1",
    ],
  ]);
});

test("an unknown lowest temperature is an assumption too, whether or not the coefficient is known", () => {
  for (const known of [undefined, coefficient]) {
    const cold = coldOpenCircuitVoltage({ ...string, coefficient: known }, gb.coldFactors)!;
    expect(workingLine(cold)).toBe("Uoc,max = n · Uoc · k = 11 · 38.9 V · 1.2 = 513.5 V");
    expect(assumptions(cold)).toHaveLength(1);
  }
});

test("colder than the table of factors ends, nothing is guessed", () => {
  const arctic = { ...string, lowestTemperature: celsiusDegrees(-41, "Tmin") };
  expect(coldOpenCircuitVoltage(arctic, gb.coldFactors)).toBeUndefined();
});

test("nested steps come first, each once, and the result last", () => {
  const power = percentPerKelvin(-0.29, "γ");
  const beta = maxPowerCoefficient({ power, shortCircuitCurrent: percentPerKelvin(0.045, "α") })!;
  const hottest = hottestCellByMounting(celsiusDegrees(35, "Tair"), gb.cellRise.get("on-roof")!);
  const hot = hotMaxPowerVoltage({ modules: count(11), voltage: volts(32.6, "Ump") }, beta, hottest);
  expect(workingLines(hot)).toEqual([
    "βmp = γ − α = −0.29 %/K − 0.045 %/K = −0.335 %/K",
    "Tmax = Tair + ΔT = 35 °C + 35 K = 70 °C",
    "Ump,hot = n · Ump · (1 + βmp · (Tmax − 25 °C)) = 11 · 32.6 V · (1 + (−0.335 %/K) · (70 °C − 25 °C)) = 304.5 V",
  ]);
  expect(assumptions(hot).map(({ symbol }) => symbol)).toEqual(["ΔT"]);
});

test("a drop over two runs names both, at the hot resistance", () => {
  const at20 = tableResistance({ conductorClass: "class-5", coating: "tinned" }, 4e-6)!;
  const perMetre = resistanceAtTemperature(at20, gb.limits.hotConductorTemperature);
  const current = amperes(13.2, "Imp");
  const path = pathDrop([18, 1.2].map((length) => runDrop({ length: metres(length), perMetre, current })));
  const share = relativeDrop(path, volts(358.6, "Ump,string"));
  expect(workingLines(share)).toEqual([
    "r = r20 · (234.5 °C + Tc) / (234.5 °C + 20 °C) = 5.09 Ω/km · (234.5 °C + 90 °C) / (234.5 °C + 20 °C) = 6.49 Ω/km",
    "ΔU = 2 · L · r · I = 2 · 18 m · 6.49 Ω/km · 13.2 A = 3.08 V",
    "ΔU = 2 · L · r · I = 2 · 1.2 m · 6.49 Ω/km · 13.2 A = 0.206 V",
    "ΔU,path = Σ ΔU = 3.08 V + 0.206 V = 3.29 V",
    "Δu = ΔU,path / Ump,string = 3.29 V / 358.6 V = 0.917 %",
  ]);
});

test("sums in the middle of a formula keep their brackets, a single term needs none", () => {
  const figure = (currents: readonly number[]) =>
    derive("X", 1, "number", "", "2 · Σ I", parallelCurrent(currents.map((value) => amperes(value))).terms);
  expect(workingLine(figure([14, 13.5]))).toBe("X = 2 · Σ I = 2 · (14 A + 13.5 A) = 1");
  expect(workingLine(figure([14]))).toBe("X = 2 · Σ I = 2 · 14 A = 1");
});

test("the longest symbol is taken first, and letters around a symbol protect it", () => {
  const terms = [volts(1, "U"), volts(2, "Uoc"), volts(3, "Uoc,max"), count(4, "n")];
  const figure = derive("X", 0, "number", "", "U + Uoc + Uoc,max + min(n; 5) + nU", terms);
  expect(workingLine(figure)).toBe("X = U + Uoc + Uoc,max + min(n; 5) + nU = 1 V + 2 V + 3 V + min(4; 5) + nU = 0");
});

test("a figure without terms, and a given one, are one line each", () => {
  expect(workingLine(derive("Ca", 1, "ratio", "", "1", []))).toBe("Ca = 1");
  expect(workingLines(lowestTemperature)).toEqual(["Tmin = −10 °C (Tmin)"]);
});

test("degrees Fahrenheit stay in what was written and become Celsius where a formula counts from 25 °C", () => {
  const written = stated("T", (14 + 459.67) / 1.8, "temperature", "degF", "site");
  expect(formatFigure(written)).toBe("14 °F");
  expect(workingLine(temperatureLine(written))).toBe("X = T − 25 °C = −10 °C − 25 °C = 0 K");
});

function temperatureLine(temperature: Parameters<typeof workingLine>[0]): Derived {
  return derive("X", 0, "temperature-difference", "K", "T − 25 °C", [temperature]);
}

test("the temperature at a limit divides by a negative coefficient in brackets", () => {
  const limit = temperatureAtLimit({ modules: count(12), voltage: volts(38.8, "U") }, coefficient, volts(500))!;
  expect(workingLine(limit)).toBe(
    "Tlimit = 25 °C + (Ulimit / (n · U) − 1) / β = 25 °C + (500 V / (12 · 38.8 V) − 1) / (−0.25 %/K) = −4.6 °C",
  );
});

test("only the factors that were used stand in the formula of a capacity", () => {
  expect(workingLine(currentCapacity(amperes(42, "It"), { ambient: ratio(0.87, "Ca") }))).toBe(
    "Iz = It · Ca = 42 A · 0.87 = 36.5 A",
  );
  const all = { ambient: ratio(0.87, "Ca"), grouping: ratio(0.8, "Cg"), insulation: ratio(0.5, "Ci") };
  expect(workingLine(currentCapacity(amperes(42, "It"), all))).toBe(
    "Iz = It · Ca · Cg · Ci = 42 A · 0.87 · 0.8 · 0.5 = 14.6 A",
  );
});

// BS 7671:2018, Table 4C1, item 1, two circuits (from memory).
test("what is read off a table says what it was read at", () => {
  const factor = groupingFactor(gb.grouping.values().next().value!, count(2, "grouped-circuits"))!;
  expect(workingLine(factor)).toBe("Cg = Cg(Ng) = Cg(2) = 0.8");
});

test("figures passed under other symbols are printed under the formula's", () => {
  expect(workingLine(reverseCurrent(count(3, "strings"), amperes(17.375, "Isc,max")))).toBe(
    "Irev = (Np − 1) · I = (3 − 1) · 17.375 A = 34.8 A",
  );
});

test.each([
  [465.3412, "465.3"],
  [-0.0000123456, "−0.00001235"],
  [1234567.8, "1234568"],
  [0.1 + 0.2, "0.3"],
  [100, "100"],
  [9.99996, "10"],
  [-0, "0"],
  [1e-30, "0"],
  [Number.POSITIVE_INFINITY, "∞"],
  [Number.NaN, "not a number"],
])("%d prints as %s", (value, text) => {
  expect(formatNumber(value)).toBe(text);
});

test.each([
  [1900, "current", undefined, "1.9 kA"],
  [0.03, "current", undefined, "30 mA"],
  [4e-6, "area", undefined, "4 mm²"],
  [550e6, "resistance", undefined, "550 MΩ"],
  [0.0916, "resistance", undefined, "91.6 mΩ"],
  [0, "resistance", undefined, "0 Ω"],
  [0.00674, "ratio", "%", "0.674 %"],
  [1.25, "ratio", undefined, "1.25"],
  [263.15, "temperature", undefined, "−10 °C"],
  [35, "temperature-difference", undefined, "35 K"],
  [-0.0025, "ratio-per-kelvin", undefined, "−0.25 %/K"],
  [-0.0973, "voltage-per-kelvin", undefined, "−97.3 mV/K"],
  [7310, "power", undefined, "7.31 kW"],
  [640, "irradiance", undefined, "640 W/m²"],
  [0.5e-6 / (365.25 * 86_400), "flash-density", undefined, "0.5 /km²/yr"],
  [5.26e-6, "area", "AWG", "10 AWG"],
  [107.2e-6, "area", "AWG", "4/0 AWG"],
] as const)("%d of %s in %s prints as %s", (value, dimension, unit, text) => {
  expect(formatValue(value, dimension, unit)).toBe(text);
});

// Instruments of the trade: loop testers read 0.01 Ω, clamp meters 0.1 A, voltage testers 0.1 V (common practice, no source).
test.each([
  [0.27184, "resistance", "ohm", "0.272 Ω"],
  [1.7475, "resistance", "ohm", "1.75 Ω"],
  [1666.67, "resistance", "ohm", "1667 Ω"],
  [3.0841, "voltage", "V", "3.08 V"],
  [465.3, "voltage", "V", "465.3 V"],
  [1015.3, "voltage", "V", "1015 V"],
  [21.739, "current", "A", "21.7 A"],
  [101.739, "current", "A", "101.7 A"],
  [1898.8, "current", "kA", "1.9 kA"],
  [42.57, "power", "W", "42.6 W"],
  [11_180, "power", "kW", "11.18 kW"],
  [0.76376, "ratio", undefined, "0.764"],
  [331.2, "temperature", "degC", "58.1 °C"],
] as const)("%d of %s, worked out, has the digits that the trade gives it: %s %s", (value, dimension, unit, text) => {
  expect(formatFigure(derive("x", value, dimension, unit, "y", []))).toBe(text);
});

test("two figures that differ never look alike, and equal ones do", () => {
  expect(formatApart(derive("U", 600.04, "voltage", "V", "x", []), volts(600))).toEqual(["600.04 V", "600 V"]);
  expect(formatApart(derive("U", 600, "voltage", "V", "x", []), volts(600))).toEqual(["600 V", "600 V"]);
  expect(
    formatApart(derive("Up", 2800, "voltage", undefined, "x", []), stated("Uw", 4000, "voltage", "kV", "")),
  ).toEqual(["2.8 kV", "4 kV"]);
  expect(
    formatApart(derive("Isc", 17.5, "current", undefined, "x", []), stated("I", 10_000, "current", "kA", "")),
  ).toEqual(["17.5 A", "10 kA"]);
});

test("a source says how well it is known", () => {
  const title = "BS 7671:2018";
  expect(sourceText({ title, clause: "Table 4B1", basis: "read" })).toBe("BS 7671:2018, Table 4B1");
  expect(sourceText({ title, clause: "Table 4B1", basis: "memory" })).toBe(
    "BS 7671:2018, Table 4B1 (from memory: confirm against the current edition)",
  );
  expect(sourceText({ title: "aim of designers", basis: "practice" })).toBe(
    "aim of designers: common practice, no published source",
  );
});
