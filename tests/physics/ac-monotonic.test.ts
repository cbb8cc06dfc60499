import fc from "fast-check";
import { expect, test } from "vitest";
import { acCurrent, designCurrent } from "../../language-server/src/physics/ac-current.js";
import { acRunDrop, computedDrop } from "../../language-server/src/physics/ac-drop.js";
import { bankCurrent, bankVoltage, batteryCurrent } from "../../language-server/src/physics/battery.js";
import { joinedCurrent, throughCurrent } from "../../language-server/src/physics/board-current.js";
import { loopResistance, resistanceAtTemperature } from "../../language-server/src/physics/conductor.js";
import { tableResistance } from "../../language-server/src/physics/conductor-tables.js";
import { disconnectionTime, largestLoop, operatingCurrent } from "../../language-server/src/physics/disconnection.js";
import { armourResistance, earthLoop, runLoop } from "../../language-server/src/physics/earth-loop.js";
import { adiabaticSize, letThrough } from "../../language-server/src/physics/fault-energy.js";
import { islandFaultCurrent, largestElectrodeResistance } from "../../language-server/src/physics/island.js";
import {
  busiestLine,
  type LineLoad,
  lineCurrents,
  lineDifference,
} from "../../language-server/src/physics/phase-currents.js";
import { faultCurrentBehind, faultCurrentWithGenerators } from "../../language-server/src/physics/prospective-fault.js";
import { protectiveSize } from "../../language-server/src/physics/protective-size.js";
import { detects, residualTypes } from "../../language-server/src/physics/residual-current.js";
import { supplyVoltageAtTrip } from "../../language-server/src/physics/supply-voltage.js";
import { insulationFactor } from "../../language-server/src/physics/thermal-insulation.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import {
  amperes,
  celsiusDegrees,
  count,
  metres,
  milliamperes,
  ohms,
  ohmsPerKilometre,
  ratio,
  seconds,
  squareMillimetres,
  volts,
  watts,
} from "./figures.js";

/** What must hold on the a.c. side whatever the figures are. */

const u0 = volts(230, "U0");
const length = fc.double({ min: 0.1, max: 300, noNaN: true });
const current = fc.double({ min: 0.1, max: 200, noNaN: true });
const degrees = fc.double({ min: -20, max: 120, noNaN: true });
const perKilometre = fc.double({ min: 0.1, max: 20, noNaN: true });
const impedance = fc.double({ min: 0.01, max: 30, noNaN: true });
const size = fc.constantFrom(1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95);
const curve = fc.constantFrom("B", "C", "D");
const ordered = (a: number, b: number) => [Math.min(a, b), Math.max(a, b)] as const;

test("longer never lowers Zs, and another run never does", () => {
  fc.assert(
    fc.property(impedance, length, length, perKilometre, perKilometre, (external, a, b, line, protective) => {
      const [short, long] = ordered(a, b);
      const run = (metresLong: number) =>
        runLoop({ length: metres(metresLong), line: ohmsPerKilometre(line), protective: ohmsPerKilometre(protective) });
      const ze = ohms(external, "Ze");
      expect(earthLoop(ze, [run(long)]).value).toBeGreaterThanOrEqual(earthLoop(ze, [run(short)]).value);
      expect(earthLoop(ze, [run(short), run(long)]).value).toBeGreaterThan(earthLoop(ze, [run(long)]).value);
      expect(earthLoop(ze, []).value).toBe(external);
    }),
  );
});

test("hotter never lowers a resistance, of copper or of armour", () => {
  fc.assert(
    fc.property(size, degrees, degrees, (mm2, a, b) => {
      const [cool, hot] = ordered(a, b);
      const at20 = tableResistance({ conductorClass: "class-2", coating: "plain" }, mm2 * 1e-6)!;
      const copper = (t: number) => resistanceAtTemperature(at20, celsiusDegrees(t, "Tc")).value;
      const steel = (t: number) => armourResistance(squareMillimetres(mm2), celsiusDegrees(t, "Ta")).value;
      expect(copper(hot)).toBeGreaterThanOrEqual(copper(cool));
      expect(steel(hot)).toBeGreaterThanOrEqual(steel(cool));
    }),
  );
});

test("a longer run never lowers its rise, a larger conductor never raises it, and no power factor exceeds none", () => {
  fc.assert(
    fc.property(
      length,
      length,
      current,
      size,
      fc.double({ min: 0, max: 1, noNaN: true }),
      (a, b, amps, mm2, cosine) => {
        const [short, long] = ordered(a, b);
        const drop = (metresLong: number, area: number, powerFactor?: number) =>
          acRunDrop({
            length: metres(metresLong),
            current: amperes(amps),
            perMetre: computedDrop({
              kind: { conductorClass: "class-2", coating: "plain" },
              crossSection: area * 1e-6,
              temperature: celsiusDegrees(70, "Tc"),
              reactance: gb.ac.reactance,
              loadedConductors: 2,
            })!,
            powerFactor: powerFactor === undefined ? undefined : ratio(powerFactor, "cosφ"),
          }).value;
        expect(drop(long, mm2)).toBeGreaterThanOrEqual(drop(short, mm2));
        expect(drop(long, 95)).toBeLessThanOrEqual(drop(long, mm2));
        expect(drop(long, mm2, cosine)).toBeLessThanOrEqual(drop(long, mm2) * (1 + 1e-12));
      },
    ),
  );
});

test("a faster time, a larger rating and a higher curve never allow a larger Zs", () => {
  const largest = (kind: string, rating: number, time: number) => {
    const operating = operatingCurrent(gb.ac.operatingMultiples, { curve: kind, rating: amperes(rating, "In") }, time)!;
    return largestLoop(u0, gb.limits.minimumVoltageFactor, operating).value;
  };
  const time = fc.constantFrom(0.04, 0.07, 0.1, 0.2, 0.4, 0.8, 1, 5);
  fc.assert(
    fc.property(curve, current, current, time, time, (kind, a, b, one, other) => {
      const [small, large] = ordered(a, b);
      const [fast, slow] = ordered(one, other);
      expect(largest(kind, large, fast)).toBeLessThanOrEqual(largest(kind, small, fast));
      expect(largest(kind, small, fast)).toBeLessThanOrEqual(largest(kind, small, slow));
      expect(largest("C", small, fast)).toBeLessThanOrEqual(largest("B", small, fast));
      expect(largest("D", small, fast)).toBeLessThanOrEqual(largest("C", small, fast));
    }),
  );
});

test("a higher voltage to earth never allows more time, and TT never more than TN", () => {
  const voltage = fc.double({ min: 50.1, max: 900, noNaN: true });
  fc.assert(
    fc.property(voltage, voltage, (a, b) => {
      const [low, high] = ordered(a, b);
      const time = (system: "TN" | "TT", u: number) =>
        disconnectionTime(gb.ac.disconnection, { system, use: "final", voltage: volts(u), rating: amperes(16, "In") })!
          .value;
      expect(time("TN", high)).toBeLessThanOrEqual(time("TN", low));
      expect(time("TT", high)).toBeLessThanOrEqual(time("TN", high));
    }),
  );
});

test("the fault current behind runs is never above that at the origin, nor below the true one at any angle", () => {
  const angle = fc.double({ min: 0, max: Math.PI / 2, noNaN: true });
  const origin = fc.double({ min: 200, max: 20_000, noNaN: true });
  fc.assert(
    fc.property(origin, length, perKilometre, angle, angle, (atOrigin, long, r20, supplyAngle, cableAngle) => {
      const run = { length: metres(long), perMetre: ohmsPerKilometre(r20) };
      const found = faultCurrentBehind({ voltage: u0, atOrigin: amperes(atOrigin), runs: [run], lines: 1 }).value;
      const z0 = 230 / atOrigin;
      // Reactance only adds to what the run's resistance does.
      const resistance = loopResistance(run.length, run.perMetre).value;
      const reactance = resistance * Math.tan(Math.min(cableAngle, 1.4));
      const real = z0 * Math.cos(supplyAngle) + resistance;
      const imaginary = z0 * Math.sin(supplyAngle) + reactance;
      const truth = 230 / Math.hypot(real, imaginary);
      expect(found).toBeLessThanOrEqual(atOrigin * (1 + 1e-12));
      expect(found).toBeGreaterThanOrEqual(truth * (1 - 1e-12));
    }),
  );
});

test("generators never lower a fault current; without runs it is that of the origin; a three-phase run counts once", () => {
  const runs = [{ length: metres(20), perMetre: ohmsPerKilometre(3.08) }];
  const at = (lines: 1 | 3, all = runs) =>
    faultCurrentBehind({ voltage: u0, atOrigin: amperes(3000), runs: all, lines }).value;
  expect(at(1, [])).toBe(3000);
  expect(at(3)).toBeGreaterThan(at(1));
  expect(faultCurrentWithGenerators(amperes(1500), [amperes(22), amperes(25)]).value).toBe(1547);
  expect(faultCurrentWithGenerators(amperes(1500), []).value).toBe(1500);
});

test("more current, or a longer time, never needs a smaller conductor", () => {
  const time = fc.double({ min: 0.05, max: 5, noNaN: true });
  fc.assert(
    fc.property(current, current, time, time, fc.constantFrom(...gb.ac.adiabaticFactors.values()), (a, b, c, d, k) => {
      const [small, large] = ordered(a, b);
      const [fast, slow] = ordered(c, d);
      const area = (i: number, t: number) => adiabaticSize(letThrough(amperes(i), seconds(t)), k).value;
      expect(area(large, fast)).toBeGreaterThanOrEqual(area(small, fast));
      expect(area(small, slow)).toBeGreaterThanOrEqual(area(small, fast));
    }),
  );
});

test("a protective conductor by table is never larger than its line conductor, nor smaller than half of it", () => {
  for (const line of [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95]) {
    const found = protectiveSize(squareMillimetres(line), gb.ac.protectiveSizes).value * 1e6;
    expect(found).toBeLessThanOrEqual(line + 1e-9);
    expect(found).toBeGreaterThanOrEqual(line / 2 - 5);
  }
});

test("a bar carries no less than a part in series with the supply, and neither less than the cut-out", () => {
  fc.assert(
    fc.property(current, fc.array(current, { maxLength: 4 }), (fuse, generation) => {
      const generators = generation.map((each) => amperes(each, "Ig"));
      const bar = joinedCurrent(amperes(fuse, "In"), generators).value;
      const through = throughCurrent(amperes(fuse, "In"), generators).value;
      expect(bar).toBeGreaterThanOrEqual(through);
      expect(through).toBeGreaterThanOrEqual(fuse);
    }),
  );
});

test("the design current is the largest of its directions and one of them", () => {
  fc.assert(
    fc.property(current, current, (out, back) => {
      const design = designCurrent([
        { direction: "export", current: amperes(out) },
        { direction: "import", current: amperes(back) },
      ])!;
      expect(design.current.value).toBe(Math.max(out, back));
      expect(design.direction).toBe(out >= back ? "export" : "import");
    }),
  );
});

test("a lower voltage, a lower efficiency and more power never lower a battery's current", () => {
  const voltage = fc.double({ min: 20, max: 500, noNaN: true });
  const share = fc.double({ min: 0.5, max: 1, noNaN: true });
  const power = fc.double({ min: 100, max: 20_000, noNaN: true });
  fc.assert(
    fc.property(power, power, voltage, voltage, share, share, (a, b, c, d, e, f) => {
      const [less, more] = ordered(a, b);
      const [low, high] = ordered(c, d);
      const [bad, good] = ordered(e, f);
      const drawn = (p: number, u: number, n: number) =>
        batteryCurrent({ power: watts(p), lowestVoltage: volts(u), efficiency: ratio(n, "η") }).value;
      expect(drawn(more, low, bad)).toBeGreaterThanOrEqual(drawn(less, high, good) * (1 - 1e-12));
    }),
  );
});

test("units in series add voltage, in parallel current, and never the other", () => {
  for (const [joined, voltage, amps] of [
    ["in-series", 3, 1],
    ["in-parallel", 1, 3],
  ] as const) {
    expect(bankVoltage(volts(51.2, "Ubat"), count(3), joined).value).toBeCloseTo(51.2 * voltage, 10);
    expect(bankCurrent(amperes(100), count(3), joined).value).toBe(100 * amps);
  }
  expect(bankVoltage(volts(51.2), count(1), "in-series").value).toBe(51.2);
});

const unit = fc.record({
  current: current.map((each) => amperes(each)),
  lines: fc.constantFrom(1 as const, 3 as const),
  line: fc.constantFrom("L1" as const, "L2" as const, "L3" as const),
});

test("what is on the lines is what the units put there; a unit more never lowers a line", () => {
  fc.assert(
    fc.property(fc.array(unit, { maxLength: 6 }), unit, (units, more) => {
      const total = (all: readonly LineLoad[]) => all.reduce((sum, each) => sum + each.current.value * each.lines, 0);
      const before = lineCurrents(units, 3)!;
      const after = lineCurrents([...units, more], 3)!;
      const sum = [...before.values()].reduce((all, each) => all + each.value, 0);
      expect(sum).toBeCloseTo(total(units), 6);
      for (const [line, { value }] of before) expect(after.get(line)!.value).toBeGreaterThanOrEqual(value - 1e-9);
      expect(busiestLine(after).current.value).toBeGreaterThanOrEqual(sum / 3);
      expect(lineDifference(after).value).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("a single-phase unit that does not say its line is not guessed, nor a three-phase one on a single-phase supply", () => {
  const single: LineLoad = { current: amperes(16), lines: 1 };
  const triple: LineLoad = { current: amperes(16), lines: 3 };
  expect(lineCurrents([triple, single], 3)).toBeUndefined();
  expect(lineCurrents([triple], 1)).toBeUndefined();
  expect([...lineCurrents([single, single], 1)!].map(([line, { value }]) => [line, value])).toEqual([["L1", 32]]);
  expect(lineDifference(lineCurrents([single], 1)!).value).toBe(0);
});

test("three-phase power makes a third of the current on each line", () => {
  expect(acCurrent(watts(11_040), u0, 3).value).toBe(16);
  expect(acCurrent(watts(11_040), u0, 1).value).toBe(48);
});

test("a longer stretch in insulation never leaves more capacity", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 5, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }), (a, b) => {
      const [short, long] = ordered(a, b);
      const factor = (of: number) => insulationFactor(gb.ac.thermalInsulation, metres(of))!.value;
      expect(factor(long)).toBeLessThanOrEqual(factor(short));
      expect(factor(long)).toBeGreaterThanOrEqual(0.5);
    }),
  );
});

test("an island never feeds more than the inverter can, nor a longer loop more than a shorter one", () => {
  fc.assert(
    fc.property(current, impedance, impedance, (limit, a, b) => {
      const [short, long] = ordered(a, b);
      const fed = (loop: number) => islandFaultCurrent(amperes(limit), u0, ohms(loop, "Zs")).value;
      expect(fed(short)).toBeLessThanOrEqual(limit);
      expect(fed(long)).toBeLessThanOrEqual(fed(short));
    }),
  );
});

test("a less sensitive RCD never allows a worse electrode", () => {
  const { touchVoltage, electrodeResistance } = gb.limits;
  const largest = (mA: number) => largestElectrodeResistance(touchVoltage, milliamperes(mA), electrodeResistance).value;
  expect([30, 100, 300, 500].map(largest).map(Math.round)).toEqual([200, 200, 167, 100]);
});

test("each RCD type detects what the ones before it do", () => {
  for (const [index, type] of residualTypes.entries())
    for (const [other, needed] of residualTypes.entries()) expect(detects(type, needed)).toBe(index >= other);
  expect(detects("S", "AC")).toBe(false);
});

test("more rise never raises the supply voltage at which the inverter leaves", () => {
  const rise = fc.double({ min: 0, max: 20, noNaN: true });
  fc.assert(
    fc.property(rise, rise, rise, (a, b, cable) => {
      const [small, large] = ordered(a, b);
      const at = (each: number) =>
        supplyVoltageAtTrip(gb.limits.overVoltageTrip, volts(each, "ΔUs"), volts(cable, "ΔU")).value;
      expect(at(large)).toBeLessThanOrEqual(at(small));
    }),
  );
});
