import { expect, test } from "vitest";
import { assumptions } from "../../language-server/src/physics/figure.js";
import { counted, stated } from "../../language-server/src/physics/make.js";
import { coldOpenCircuitVoltage } from "../../language-server/src/physics/string-voltage.js";
import { workingLine } from "../../language-server/src/physics/working.js";
import { gb } from "../../language-server/src/rules/gb/index.js";

const modules = counted("n", 11, "S1");
const voltage = stated("Uoc", 38.9, "voltage", "V", "Hollin430, open-circuit-voltage");
const coefficient = stated("β", -0.0025, "ratio-per-kelvin", "%/K", "Hollin430, open-circuit-voltage-coefficient");
const lowestTemperature = stated("Tmin", 263.15, "temperature", "degC", "site, lowest-temperature");

test("a cold voltage reads as the sum a designer writes by hand", () => {
  const cold = coldOpenCircuitVoltage({ modules, voltage, coefficient, lowestTemperature }, gb.coldFactors)!;
  expect(workingLine(cold)).toBe(
    "Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 11 · 38.9 V · (1 + (−0.25 %/K) · (−10 °C − 25 °C)) = 465.3 V",
  );
  expect(assumptions(cold)).toEqual([]);
});

test("an unknown coefficient is an assumption with its reason and source", () => {
  const cold = coldOpenCircuitVoltage({ modules, voltage, lowestTemperature }, gb.coldFactors)!;
  expect(workingLine(cold)).toBe("Uoc,max = n · Uoc · k = 11 · 38.9 V · 1.14 = 487.8 V");
  expect(assumptions(cold).map(({ origin }) => origin.text)).toEqual([
    "temperature coefficient of Uoc not stated: factor of crystalline silicon for a lowest temperature down to −10 °C",
  ]);
});
