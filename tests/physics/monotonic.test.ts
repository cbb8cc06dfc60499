import fc from "fast-check";
import { expect, test } from "vitest";
import { ambientFactor, currentCapacity, lookUpFactor } from "../../language-server/src/physics/ampacity.js";
import { resistanceAtTemperature } from "../../language-server/src/physics/conductor.js";
import { tableResistance } from "../../language-server/src/physics/conductor-tables.js";
import { expectedCurrent } from "../../language-server/src/physics/expected-reading.js";
import { maximumShortCircuitCurrent, reverseCurrent } from "../../language-server/src/physics/short-circuit.js";
import { fuseFits, stringFuseNeed, stringFuseWindow } from "../../language-server/src/physics/string-fuse.js";
import { largestCount, smallestCount, temperatureAtLimit } from "../../language-server/src/physics/string-length.js";
import { coldOpenCircuitVoltage, openCircuitVoltageAt } from "../../language-server/src/physics/string-voltage.js";
import { nextSize, runDrop, runLoss, smallestSizeForDrop } from "../../language-server/src/physics/voltage-drop.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { cold, fuse712, fuse62548 } from "../../language-server/src/rules/iec/photovoltaic.js";
import {
  amperes,
  celsiusDegrees,
  count,
  metres,
  ohmsPerKilometre,
  percentPerKelvin,
  ratio,
  volts,
  voltsPerKelvin,
  wattsPerSquareMetre,
} from "./figures.js";

/** What must hold whatever the figures are. */

const degrees = fc.double({ min: -40, max: 90, noNaN: true });
const modules = fc.integer({ min: 1, max: 40 });
const moduleVoltage = fc.double({ min: 10, max: 120, noNaN: true });
const beta = fc.double({ min: -0.5, max: -0.05, noNaN: true });
const current = fc.double({ min: 0.5, max: 40, noNaN: true });
const length = fc.double({ min: 0.1, max: 500, noNaN: true });
const size = fc.constantFrom(...[1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95].map((mm2) => mm2 * 1e-6));

const solar = { conductorClass: "class-5", coating: "tinned" };

test("colder never lowers Uoc, by coefficient or by table", () => {
  fc.assert(
    fc.property(modules, moduleVoltage, fc.option(beta), degrees, degrees, (n, u, b, one, other) => {
      const at = (temperature: number) =>
        coldOpenCircuitVoltage(
          {
            modules: count(n),
            voltage: volts(u),
            coefficient: b === null ? undefined : percentPerKelvin(b),
            lowestTemperature: celsiusDegrees(temperature, "Tmin"),
          },
          cold,
        )!.value;
      expect(at(Math.min(one, other))).toBeGreaterThanOrEqual(at(Math.max(one, other)));
    }),
  );
});

test("more modules never lower Uoc", () => {
  fc.assert(
    fc.property(modules, moduleVoltage, beta, degrees, (n, u, b, temperature) => {
      const at = (number: number) =>
        openCircuitVoltageAt(
          { modules: count(number), voltage: volts(u) },
          percentPerKelvin(b),
          celsiusDegrees(temperature),
        ).value;
      expect(at(n + 1)).toBeGreaterThan(at(n));
    }),
  );
});

test("an absolute coefficient and its relative twin give one voltage", () => {
  fc.assert(
    fc.property(modules, moduleVoltage, beta, degrees, (n, u, b, temperature) => {
      const string = { modules: count(n), voltage: volts(u) };
      const cell = celsiusDegrees(temperature);
      const relative = openCircuitVoltageAt(string, percentPerKelvin(b), cell).value;
      const absolute = openCircuitVoltageAt(string, voltsPerKelvin((b / 100) * u), cell).value;
      expect(absolute / relative).toBeCloseTo(1, 12);
    }),
  );
});

test("at the temperature where a limit is reached the voltage is the limit", () => {
  fc.assert(
    fc.property(
      modules,
      moduleVoltage,
      beta,
      fc.double({ min: 0.9, max: 1.2, noNaN: true }),
      fc.boolean(),
      (n, u, b, share, isAbsolute) => {
        const string = { modules: count(n), voltage: volts(u) };
        const coefficient = isAbsolute ? voltsPerKelvin((b / 100) * u) : percentPerKelvin(b);
        const limit = volts(n * u * share);
        const temperature = temperatureAtLimit(string, coefficient, limit)!;
        expect(openCircuitVoltageAt(string, coefficient, temperature).value / limit.value).toBeCloseTo(1, 9);
      },
    ),
  );
});

test("the largest count holds and one more does not; the smallest count reaches and one fewer does not", () => {
  fc.assert(
    fc.property(moduleVoltage, fc.double({ min: 130, max: 1500, noNaN: true }), (u, bound) => {
      const most = largestCount(volts(bound), volts(u)).value;
      expect(most * u).toBeLessThanOrEqual(bound * (1 + 1e-8));
      expect((most + 1) * u).toBeGreaterThan(bound);
      const fewest = smallestCount(volts(bound), volts(u)).value;
      expect(fewest * u).toBeGreaterThanOrEqual(bound * (1 - 1e-8));
      expect((fewest - 1) * u).toBeLessThan(bound);
    }),
  );
});

test("twelve modules of 50 V hold exactly 600 V", () => {
  expect(largestCount(volts(600), volts(50)).value).toBe(12);
  expect(largestCount(volts(0.3), volts(0.1)).value).toBe(3);
  expect(smallestCount(volts(0.3), volts(0.1)).value).toBe(3);
});

test("longer never lowers drop or loss, thicker never raises them", () => {
  fc.assert(
    fc.property(length, length, size, current, (one, other, area, amps) => {
      const run = (metresOneWay: number, crossSection: number) => ({
        length: metres(metresOneWay),
        perMetre: resistanceAtTemperature(tableResistance(solar, crossSection)!, celsiusDegrees(90, "Tc")),
        current: amperes(amps),
      });
      const short = run(Math.min(one, other), area);
      const long = run(Math.max(one, other), area);
      expect(runDrop(long).value).toBeGreaterThanOrEqual(runDrop(short).value);
      expect(runLoss(long).value).toBeGreaterThanOrEqual(runLoss(short).value);
      const thicker = nextSize(area);
      if (thicker !== undefined) expect(runDrop(run(one, thicker)).value).toBeLessThan(runDrop(run(one, area)).value);
    }),
  );
});

test("the smallest size for a drop holds, and the next smaller does not", () => {
  fc.assert(
    fc.property(length, current, fc.double({ min: 0.1, max: 20, noNaN: true }), (l, amps, allowed) => {
      const question = {
        length: metres(l),
        current: amperes(amps),
        kind: solar,
        conductorTemperature: celsiusDegrees(90, "Tc"),
        allowed: volts(allowed),
      };
      const found = smallestSizeForDrop(question);
      const drop = (crossSection: number) =>
        runDrop({
          length: question.length,
          current: question.current,
          perMetre: resistanceAtTemperature(tableResistance(solar, crossSection)!, question.conductorTemperature),
        }).value;
      const sizes = [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95].map((mm2) => mm2 * 1e-6);
      const smaller = found === undefined ? sizes : sizes.filter((each) => each < found * 0.999);
      if (found !== undefined) expect(drop(found)).toBeLessThanOrEqual(allowed);
      for (const each of smaller) expect(drop(each)).toBeGreaterThan(allowed);
    }),
  );
});

test("hotter never raises Iz, for any column of the rule set", () => {
  fc.assert(
    fc.property(fc.constantFrom(...gb.ampacity), degrees, degrees, (column, one, other) => {
      const [rating] = column.ratings.values();
      const at = (temperature: number) =>
        currentCapacity(rating!, { ambient: ambientFactor(celsiusDegrees(temperature, "Ta"), column.ambient) }).value;
      expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)));
    }),
  );
});

test("more circuits together never raise Iz", () => {
  for (const table of gb.grouping.values()) {
    const known = Array.from({ length: 25 }, (_, index) => lookUpFactor(table, index + 1)?.value);
    const values = known.filter((value) => value !== undefined);
    expect(values[0]).toBe(1);
    expect(values).toEqual([...values].sort((a, b) => b - a));
    // Past the table's end there is no factor, and none before it is missing.
    expect(known.slice(0, values.length)).toEqual(values);
  }
});

test("more strings in parallel never lower the reverse current", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 30 }), current, (strings, amps) => {
      const more = reverseCurrent(count(strings + 1, "Np"), amperes(amps)).value;
      expect(more).toBeGreaterThan(reverseCurrent(count(strings, "Np"), amperes(amps)).value);
    }),
  );
  expect(reverseCurrent(count(1, "Np"), amperes(14)).value).toBe(0);
});

test("the window of IEC 62548 is never laxer than that of IEC 60364-7-712, so a set that names both may take it", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 30 }),
      current,
      fc.double({ min: 5, max: 60, noNaN: true }),
      fc.double({ min: 1, max: 80, noNaN: true }),
      (strings, isc, rating, fuse) => {
        const shortCircuitCurrent = amperes(isc);
        const inputs = {
          stringsInParallel: count(strings, "Np"),
          shortCircuitCurrent,
          maximumShortCircuitCurrent: maximumShortCircuitCurrent({
            current: shortCircuitCurrent,
            factor: gb.limits.shortCircuitFactor,
          }),
          moduleFuseRating: amperes(rating, "Imod"),
        };
        if (stringFuseNeed(inputs, fuse712).needed) expect(stringFuseNeed(inputs, fuse62548).needed).toBe(true);
        if (fuseFits(fuse, stringFuseWindow(inputs, fuse62548))) {
          expect(fuseFits(fuse, stringFuseWindow(inputs, fuse712))).toBe(true);
        }
      },
    ),
  );
});

test("brighter never lowers the expected current, a rear-side gain never lowers the highest one", () => {
  fc.assert(
    fc.property(current, degrees, fc.double({ min: 1, max: 1200, noNaN: true }), (isc, temperature, light) => {
      const alpha = percentPerKelvin(0.05, "α");
      const at = (irradiance: number) =>
        expectedCurrent(amperes(isc), alpha, wattsPerSquareMetre(irradiance), celsiusDegrees(temperature)).value;
      expect(at(light + 1)).toBeGreaterThan(at(light));
      const factor = gb.limits.shortCircuitFactor;
      const plain = maximumShortCircuitCurrent({ current: amperes(isc), factor });
      const bifacial = maximumShortCircuitCurrent({ current: amperes(isc), factor, bifacialGain: ratio(0.1, "b") });
      expect(bifacial.value / plain.value).toBeCloseTo(1.1, 12);
    }),
  );
});

test("without a current there is no drop", () => {
  const run = { length: metres(18), perMetre: ohmsPerKilometre(5.09), current: amperes(0) };
  expect(runDrop(run).value).toBe(0);
  expect(runLoss(run).value).toBe(0);
});
