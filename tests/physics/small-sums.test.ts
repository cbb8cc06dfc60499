import { expect, test } from "vitest";
import { loopResistance } from "../../language-server/src/physics/conductor.js";
import { tableResistance } from "../../language-server/src/physics/conductor-tables.js";
import { stated } from "../../language-server/src/physics/make.js";
import { maxPowerCoefficient, relativeCoefficient } from "../../language-server/src/physics/max-power-coefficient.js";
import { maximumShortCircuitCurrent, shortCircuitCurrentAt } from "../../language-server/src/physics/short-circuit.js";
import { fuseFits, stringFuseWindow } from "../../language-server/src/physics/string-fuse.js";
import { openCircuitVoltageAt } from "../../language-server/src/physics/string-voltage.js";
import { highestProtectionLevel, impulseWithstand } from "../../language-server/src/physics/surge.js";
import { longestRun, nextSize, runDrop, runLoss, totalLoss } from "../../language-server/src/physics/voltage-drop.js";
import { workingLine } from "../../language-server/src/physics/working.js";
import { iec } from "../../language-server/src/rules/iec/index.js";
import { fuse712 } from "../../language-server/src/rules/iec/photovoltaic.js";
import {
  amperes,
  amperesPerKelvin,
  celsiusDegrees,
  count,
  metres,
  ohmsPerKilometre,
  percentPerKelvin,
  ratio,
  volts,
} from "./figures.js";

/** Sums short enough to be done in the head, one of each kind. */

test("solid conductors have the resistances of stranded ones up to 16 mm², and none beyond (IEC 60228 class 1, from memory)", () => {
  const solid = (size: number) => tableResistance({ conductorClass: "class-1", coating: "plain" }, size * 1e-6)?.value;
  expect(solid(2.5)).toBe(0.00741);
  expect(solid(16)).toBe(0.00115);
  expect(solid(25)).toBeUndefined();
});

test("sizes and kinds without a row have no resistance", () => {
  expect(tableResistance({ conductorClass: "class-5", coating: "tinned" }, 5e-6)).toBeUndefined();
  expect(tableResistance({ conductorClass: "class-1", coating: "tinned" }, 4e-6)).toBeUndefined();
});

test("the next size after 6 mm² is 10 mm², after the last there is none, after an odd one the next listed", () => {
  expect(nextSize(6e-6)).toBeCloseTo(10e-6, 12);
  expect(nextSize(5e-6)).toBeCloseTo(6e-6, 12);
  expect(nextSize(95e-6)).toBeUndefined();
});

test("a run as long as it may be drops exactly what it may", () => {
  const perMetre = ohmsPerKilometre(5);
  const current = amperes(10);
  const longest = longestRun({ perMetre, current }, volts(3));
  expect(longest.value).toBeCloseTo(30, 9);
  expect(runDrop({ length: longest, perMetre, current }).value).toBeCloseTo(3, 9);
});

test("100 m of 5 Ω/km there and back are 1 Ω, and 10 A lose 100 W in it", () => {
  const run = { length: metres(100), perMetre: ohmsPerKilometre(5), current: amperes(10) };
  expect(loopResistance(run.length, run.perMetre).value).toBeCloseTo(1, 12);
  expect(runLoss(run).value).toBeCloseTo(100, 9);
  expect(workingLine(totalLoss([runLoss(run), runLoss(run)]))).toBe("P,path = Σ P = 100 W + 100 W = 200 W");
});

test("4 kV of withstand and 80 % leave 3.2 kV", () => {
  const withstand = impulseWithstand(iec.impulseWithstand, 465, "inverter")!;
  const highest = highestProtectionLevel(withstand, iec.limits.surgeProtectionFactor);
  expect(workingLine(highest)).toBe("Up,max = f · Uw = 80 % · 4 kV = 3.2 kV");
});

test("withstand rows include their own voltage, and there is none beyond 1500 V", () => {
  const inverter = (voltage: number) => impulseWithstand(iec.impulseWithstand, voltage, "inverter")?.value;
  expect([300, 300.1, 600, 1000, 1500].map(inverter)).toEqual([2500, 4000, 4000, 6000, 8000]);
  expect(inverter(1500.1)).toBeUndefined();
  expect(impulseWithstand(iec.impulseWithstand, 500, "moduleReinforced")!.value).toBe(6000);
});

test("an absolute current coefficient becomes relative by Isc, and only by it", () => {
  const absolute = amperesPerKelvin(0.007);
  expect(relativeCoefficient(absolute, amperes(14))!.value).toBeCloseTo(0.0005, 12);
  expect(relativeCoefficient(absolute, undefined)).toBeUndefined();
  expect(relativeCoefficient(absolute, amperes(0))).toBeUndefined();
});

test("a coefficient of Ump is the sheet's own before any other, and not guessed from one of its two parts", () => {
  const own = percentPerKelvin(-0.31, "βmp");
  const power = percentPerKelvin(-0.29, "γ");
  const shortCircuitCurrent = percentPerKelvin(0.045, "α");
  expect(maxPowerCoefficient({ maxPowerVoltage: own, power, shortCircuitCurrent })).toBe(own);
  expect(maxPowerCoefficient({ power })).toBeUndefined();
  expect(maxPowerCoefficient({ shortCircuitCurrent })).toBeUndefined();
});

test("Isc at 65 °C is 2 % higher at 0.05 %/K or 7 mA/K of 14 A", () => {
  for (const coefficient of [percentPerKelvin(0.05, "α"), amperesPerKelvin(0.007)]) {
    expect(shortCircuitCurrentAt(amperes(14), coefficient, celsiusDegrees(65)).value).toBeCloseTo(14.28, 9);
  }
});

test("the highest current takes heat and a rear side in where they are given, and says so", () => {
  const hot = { coefficient: percentPerKelvin(0.05, "α"), hottestCell: celsiusDegrees(65) };
  const inputs = { current: amperes(14), factor: iec.limits.shortCircuitFactor };
  expect(workingLine(maximumShortCircuitCurrent(inputs))).toBe("Isc,max = K_I · Isc = 1.25 · 14 A = 17.5 A");
  expect(workingLine(maximumShortCircuitCurrent({ ...inputs, ...hot }))).toBe(
    "Isc,max = K_I · Isc,hot = 1.25 · 14.3 A = 17.9 A",
  );
  expect(workingLine(maximumShortCircuitCurrent({ ...inputs, ...hot, bifacialGain: ratio(0.2) }))).toBe(
    "Isc,max = K_I · Isc,hot · (1 + b) = 1.25 · 14.3 A · (1 + 0.2) = 21.4 A",
  );
});

test("ten modules of 40 V at −0.25 %/K are 355 V at 70 °C", () => {
  const string = { modules: count(10), voltage: volts(40) };
  expect(openCircuitVoltageAt(string, percentPerKelvin(-0.25), celsiusDegrees(70)).value).toBeCloseTo(355, 9);
});

test("a rule on Isc,max takes its lowest rating in, a rule on Isc leaves its own out", () => {
  const shortCircuitCurrent = amperes(8);
  const inputs = {
    stringsInParallel: count(4, "Np"),
    shortCircuitCurrent,
    maximumShortCircuitCurrent: stated("Isc,max", 10, "current", "A", ""),
    moduleFuseRating: amperes(20, "Imod"),
  };
  const window = stringFuseWindow(inputs, fuse712);
  expect([window.lowest.value, window.highest.value]).toEqual([11, 20]);
  expect([10, 11, 20, 25].map((rating) => fuseFits(rating, window))).toEqual([false, true, true, false]);
  const strict = stringFuseWindow(inputs, iec.stringFuse);
  expect([12, 16, 20, 25].map((rating) => fuseFits(rating, strict))).toEqual([false, true, false, false]);
});
