import { expect, test } from "vitest";
import { acCurrent, acPower } from "../../language-server/src/physics/ac-current.js";
import { acRunDrop, findDropColumn, shareOfVoltage, tabulatedDrop } from "../../language-server/src/physics/ac-drop.js";
import { ambientFactor, findColumn, smallestSizeForCurrent } from "../../language-server/src/physics/ampacity.js";
import { largestLoop, operatingCurrent } from "../../language-server/src/physics/disconnection.js";
import { earthLoop, runLoop } from "../../language-server/src/physics/earth-loop.js";
import {
  adiabaticFactor,
  adiabaticSize,
  earthFaultCurrent,
  letThrough,
} from "../../language-server/src/physics/fault-energy.js";
import { gridRoute } from "../../language-server/src/physics/grid-route.js";
import { largestLoopReading } from "../../language-server/src/physics/loop-reading.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { amperes, celsiusDegrees, metres, ohms, ohmsPerKilometre, seconds, volts, watts } from "../physics/figures.js";

/** Sums of the a.c. side that others have published, worked again; figures are those printed there. */

const u0 = volts(230, "U0");

test.each([["singles"], ["multicore"]])(
  "6 kW over 18 m at 35 °C in method A: 26.09 A, a 32 A device, 10 mm², 2.07 V within 6.9 V, as %s (Linsley, Basic Electrical Installation Work, pp. 301–302; 9th edition p. 207)",
  (type) => {
    const cable = {
      type,
      insulation: "thermoplastic-70",
      method: "conduit-in-insulated-wall",
      loadedConductors: 2,
    } as const;
    const current = acCurrent(watts(6000), u0, 1);
    expect(current.value).toBeCloseTo(26.09, 2);
    const column = findColumn(gb.ampacity, cable)!;
    const ambient = ambientFactor(celsiusDegrees(35, "Ta"), column.ambient);
    expect(32 / ambient.value).toBeCloseTo(34.04, 0);
    expect(smallestSizeForCurrent(column, { ambient }, 32)).toBeCloseTo(10e-6, 12);
    const perMetre = tabulatedDrop(findDropColumn(gb.ac.drop, cable)!, 10e-6)!;
    const drop = acRunDrop({ length: metres(18), current, perMetre });
    expect(drop.value).toBeCloseTo(2.0661, 3);
    expect(shareOfVoltage(drop, u0).value).toBeLessThan(0.03);
  },
);

test("230 V over 1.15 Ω is 200 A; for 0.4 s at k = 115 it takes 1.1 mm² (Linsley, Basic Electrical Installation Work, pp. 250–251, example 1)", () => {
  const fault = earthFaultCurrent(u0, ohms(1.15, "Zs"));
  expect(fault.value).toBeCloseTo(200, 10);
  const k = adiabaticFactor(gb.ac.adiabaticFactors, "core", "thermoplastic-70")!;
  const size = adiabaticSize(letThrough(fault, seconds(0.4)), k);
  expect(size.value * 1e6).toBeCloseTo(1.1, 2);
  expect(size.value * 1e6).toBeLessThan(1.5);
});

test("0.15 Ω and 30 m of 6 and 2.5 mm², a fifth more when hot: 0.528 Ω, printed truncated as 0.52 (CR4, thread 38548)", () => {
  const hot = 1.2;
  const run = runLoop({
    length: metres(30),
    line: ohmsPerKilometre(3.08 * hot),
    protective: ohmsPerKilometre(7.41 * hot),
  });
  const loop = earthLoop(ohms(0.15, "Ze"), [run]);
  expect(loop.value).toBeCloseTo(0.5276, 4);
  expect(Math.floor(loop.value * 100) / 100).toBe(0.52);
});

test("a type B breaker of 45 A stands 0.97 Ω, read as 0.78 Ω at most (source ef45 of gb-values.json, a practitioners' forum, which truncates to 0.77)", () => {
  const breaker = { curve: "B", rating: amperes(45, "In") };
  const operating = operatingCurrent(gb.ac.operatingMultiples, breaker, 0.4)!;
  const largest = largestLoop(u0, gb.limits.minimumVoltageFactor, operating);
  expect(largest.value).toBeCloseTo(0.97, 2);
  expect(Math.floor(largestLoopReading(largest, gb.limits.loopReadingShare).value * 100) / 100).toBe(0.77);
});

test("16 A at 230 V are 3.68 kW, and both are still notified (sources ena and wpd of gb-values.json: the network operators' association and one operator)", () => {
  const power = acPower(amperes(16, "I"), u0, 1);
  expect(power.value).toBe(3680);
  const limit = gb.limits.notifyCurrent;
  expect(gridRoute(acCurrent(power, u0, 1), limit)).toBe("connect-and-notify");
  expect(gridRoute(acCurrent(watts(3 * 3680), u0, 3), limit)).toBe("connect-and-notify");
  expect(gridRoute(acCurrent(watts(3690), u0, 1), limit)).toBe("apply-first");
});
