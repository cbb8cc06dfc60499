import { expect, test } from "vitest";
import { expectedVoltageInFullSun, rearLight } from "../../language-server/src/physics/expected-reading.js";
import { assumptions } from "../../language-server/src/physics/figure.js";
import { fuseOperatingCurrent } from "../../language-server/src/physics/fuse-operating.js";
import { workingLine } from "../../language-server/src/physics/working.js";
import { amperes, celsiusDegrees, count, ohms, percentPerKelvin, ratio, volts } from "./figures.js";

test("reference house: 434.3 V on eleven modules at 18 °C, with full sun listed as an assumption", () => {
  const string = { modules: count(11), voltage: volts(38.8) };
  const expected = expectedVoltageInFullSun(string, percentPerKelvin(-0.25), celsiusDegrees(18));
  expect(expected.value).toBeCloseTo(434.3, 1);
  expect(assumptions(expected).map(({ symbol, value }) => [symbol, value])).toEqual([["G", 1000]]);
  expect(workingLine(expected)).toBe(
    "Uoc,exp = n · Uoc · (1 + β · (T − 25 °C)), at G = 11 · 38.8 V · (1 + (−0.25 %/K) · (18 °C − 25 °C)), at 1000 W/m² = 434.3 V",
  );
});

test("light on the rear adds its declared share: 11.2 A · 1.1 = 12.3 A", () => {
  expect(rearLight(amperes(11.2), ratio(0.1)).value).toBeCloseTo(12.32, 10);
});

test("a fuse's printed loop read backwards: 230 V · 0.95 / 7.8 Ω = 28 A (BS 7671 Table 41.2, from memory)", () => {
  const current = fuseOperatingCurrent(volts(230, "U0"), ohms(7.8));
  expect(current.value).toBeCloseTo(28.01, 2);
  expect(workingLine(current)).toBe("Ia = U0 · Cmin / Zs,max = 230 V · 0.95 / 7.8 Ω = 28 A");
});
