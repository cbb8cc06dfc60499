import fc from "fast-check";
import { expect, test } from "vitest";
import { celsius } from "../../language-server/src/physics/constants.js";
import { parametersAt } from "../../language-server/src/physics/module-model.js";
import { bracketedNewton, bracketedSecant } from "../../language-server/src/physics/root.js";
import {
  currentAt,
  type DiodeParameters,
  maxPowerPoint,
  openCircuitVoltage,
  shortCircuitCurrent,
} from "../../language-server/src/physics/single-diode.js";
import { fitModule } from "../../language-server/src/physics/single-diode-fit.js";
import { inSeries, ParallelStrings } from "../../language-server/src/physics/string-curve.js";

const parameters = fc.record({
  photocurrent: fc.double({ min: 0.01, max: 20, noNaN: true }),
  saturationCurrent: fc.double({ min: 1e-14, max: 1e-6, noNaN: true }),
  seriesResistance: fc.double({ min: 0, max: 2, noNaN: true }),
  shuntResistance: fc.double({ min: 20, max: 1e5, noNaN: true }),
  idealityVoltage: fc.double({ min: 0.5, max: 10, noNaN: true }),
});

/** Left side less right side of the single-diode equation. */
function residual(p: DiodeParameters, voltage: number, current: number): number {
  const diode = voltage + current * p.seriesResistance;
  return (
    p.photocurrent - p.saturationCurrent * Math.expm1(diode / p.idealityVoltage) - diode / p.shuntResistance - current
  );
}

test("every current found satisfies the equation", () => {
  fc.assert(
    fc.property(parameters, fc.double({ min: 0, max: 1.05, noNaN: true }), (p, share) => {
      const voltage = share * openCircuitVoltage(p);
      const current = currentAt(p, voltage);
      // Near open circuit the terms are as large as IL and cancel: the residual is judged against them.
      const scale = p.photocurrent + Math.abs(current);
      expect(Math.abs(residual(p, voltage, current)) / scale).toBeLessThan(1e-9);
    }),
  );
});

test("no point of the curve has more power than the maximum power point", () => {
  fc.assert(
    fc.property(parameters, fc.double({ min: 0, max: 1, noNaN: true }), (p, share) => {
      const { voltage, current } = maxPowerPoint(p);
      const other = share * openCircuitVoltage(p);
      expect(other * currentAt(p, other)).toBeLessThanOrEqual(voltage * current * (1 + 1e-9));
    }),
  );
});

test("in the dark there is neither voltage nor power", () => {
  const dark = {
    photocurrent: 0,
    saturationCurrent: 1e-10,
    seriesResistance: 0.2,
    shuntResistance: 300,
    idealityVoltage: 1.6,
  };
  expect(openCircuitVoltage(dark)).toBe(0);
  expect(shortCircuitCurrent(dark)).toBeCloseTo(0, 15);
  expect(maxPowerPoint(dark)).toEqual({ voltage: 0, current: 0 });
});

/** An invented module of plausible figures. */
const sheet = {
  openCircuitVoltage: 38.9,
  shortCircuitCurrent: 14,
  voltageAtMaxPower: 32.6,
  currentAtMaxPower: 13.2,
  voltageCoefficient: -0.0025 * 38.9,
  currentCoefficient: 0.00045 * 14,
};

test("a fit gives back its data sheet", () => {
  const fit = fitModule(sheet)!;
  const { voltage, current } = maxPowerPoint(fit.reference);
  expect(fit.exact).toBe(true);
  expect(openCircuitVoltage(fit.reference)).toBeCloseTo(38.9, 9);
  expect(shortCircuitCurrent(fit.reference)).toBeCloseTo(14, 9);
  expect(voltage).toBeCloseTo(32.6, 6);
  expect(current).toBeCloseTo(13.2, 6);
  const warm = openCircuitVoltage(parametersAt(fit, 1000, celsius(27)));
  expect((warm - 38.9) / 2).toBeCloseTo(sheet.voltageCoefficient, 9);
});

test("a data sheet that no diode can have is not fitted", () => {
  // More power than Uoc · Isc leaves room for, and a voltage that rises with heat.
  expect(fitModule({ ...sheet, voltageAtMaxPower: 38.8, currentAtMaxPower: 13.99 })).toBeUndefined();
  expect(fitModule({ ...sheet, voltageCoefficient: 0.1 })).toBeUndefined();
  expect(fitModule({ ...sheet, voltageAtMaxPower: 40 })).toBeUndefined();
  expect(fitModule({ ...sheet, openCircuitVoltage: Number.NaN })).toBeUndefined();
});

test("weak light costs voltage, and light and heat move current as the sheet says", () => {
  const fit = fitModule(sheet)!;
  const at = (light: number, cell: number) => parametersAt(fit, light, celsius(cell));
  expect(openCircuitVoltage(at(200, 25))).toBeLessThan(openCircuitVoltage(at(1000, 25)));
  expect(shortCircuitCurrent(at(500, 25)) / 14).toBeCloseTo(0.5, 3);
  expect(shortCircuitCurrent(at(1000, 65)) - 14).toBeCloseTo(40 * sheet.currentCoefficient, 2);
});

test("n modules in series have n times the voltage at the same current", () => {
  fc.assert(
    fc.property(parameters, fc.integer({ min: 1, max: 30 }), (p, n) => {
      const one = maxPowerPoint(p);
      const many = maxPowerPoint(inSeries(p, n));
      expect(many.voltage / (n * one.voltage)).toBeCloseTo(1, 6);
      expect(many.current / one.current).toBeCloseTo(1, 6);
      expect(openCircuitVoltage(inSeries(p, n)) / (n * openCircuitVoltage(p))).toBeCloseTo(1, 12);
    }),
  );
});

test("equal strings in parallel keep the voltage and add their currents", () => {
  const string = inSeries(fitModule(sheet)!.reference, 11);
  const both = new ParallelStrings([string, string]);
  const one = maxPowerPoint(string);
  const together = both.maxPowerPoint();
  expect(both.openCircuitVoltage()).toBeCloseTo(openCircuitVoltage(string), 9);
  expect(both.shortCircuitCurrent()).toBeCloseTo(28, 9);
  expect(together.voltage * together.current).toBeCloseTo(2 * one.voltage * one.current, 6);
});

test("unequal strings in parallel meet between their voltages and lose power", () => {
  const module = fitModule(sheet)!.reference;
  const strings = [inSeries(module, 11), inSeries(module, 6)];
  const both = new ParallelStrings(strings);
  const open = both.openCircuitVoltage();
  expect(open).toBeGreaterThan(6 * 38.9);
  expect(open).toBeLessThan(11 * 38.9);
  expect(Math.abs(both.currentAt(open))).toBeLessThan(1e-9);
  const apart = strings.map(maxPowerPoint).reduce((total, { voltage, current }) => total + voltage * current, 0);
  const { voltage, current } = both.maxPowerPoint();
  expect(voltage * current).toBeLessThan(0.75 * apart);
  expect(voltage * current).toBeGreaterThan(0.5 * apart);
});

test("roots are found where the sign changes and refused where it does not", () => {
  const cubic = (x: number) => x ** 3 - 2;
  expect(bracketedNewton(cubic, (x) => 3 * x * x, 0, 2)).toBeCloseTo(2 ** (1 / 3), 14);
  expect(bracketedSecant(cubic, 0, 2)).toBeCloseTo(2 ** (1 / 3), 13);
  expect(bracketedSecant((x) => x, 0, 2)).toBe(0);
  expect(bracketedNewton(cubic, (x) => 3 * x * x, 2, 3)).toBeNaN();
  expect(bracketedSecant(cubic, 2, 3)).toBeNaN();
});
