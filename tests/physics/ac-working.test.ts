import { expect, test } from "vitest";
import { acCurrent, designCurrent, lineCount, lineVoltage } from "../../language-server/src/physics/ac-current.js";
import {
  acRunDrop,
  computedDrop,
  findDropColumn,
  phaseDrop,
  tabulatedDrop,
} from "../../language-server/src/physics/ac-drop.js";
import { disconnectionTime, earthingSystem, largestFuseLoop } from "../../language-server/src/physics/disconnection.js";
import { armourResistance, earthLoop, runLoop } from "../../language-server/src/physics/earth-loop.js";
import {
  adiabaticFactor,
  adiabaticSize,
  earthFaultCurrent,
  energyLimit,
  letThrough,
  limitedLetThrough,
} from "../../language-server/src/physics/fault-energy.js";
import { faultCurrentBehind } from "../../language-server/src/physics/prospective-fault.js";
import { bondingByNeutral, protectiveSize } from "../../language-server/src/physics/protective-size.js";
import { supplyRise } from "../../language-server/src/physics/supply-voltage.js";
import { workingLine, workingLines } from "../../language-server/src/physics/working.js";
import { circuitInsulationRow } from "../../language-server/src/rules/ac-rules.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { iec } from "../../language-server/src/rules/iec/index.js";
import {
  amperes,
  celsiusDegrees,
  metres,
  ohms,
  ohmsPerKilometre,
  ratio,
  seconds,
  squareMillimetres,
  volts,
  watts,
} from "./figures.js";

/** The sums of the a.c. side as a designer reads them, and where they end. */

const u0 = volts(230, "U0");

test("currents and voltages of one and three phases", () => {
  expect(workingLine(acCurrent(watts(5000), u0, 1))).toBe("I = P / U0 = 5000 W / 230 V = 21.7 A");
  expect(workingLine(acCurrent(watts(11_040), u0, 3))).toBe("I = P / (3 · U0) = 11040 W / (3 · 230 V) = 16 A");
  expect(workingLine(lineVoltage(u0))).toBe("U = √3 · U0 = √3 · 230 V = 398.4 V");
  expect([1, 2, 3].map((n) => lineCount(ratio(n)))).toEqual([1, undefined, 3]);
});

test("the direction that decides stands beside the ones that do not", () => {
  const design = designCurrent([
    { direction: "export", current: amperes(21.7) },
    { direction: "pass-through", current: amperes(40) },
  ])!;
  expect(workingLine(design.current)).toBe("Ib = max(Iexp; Ipass) = max(21.7 A; 40 A) = 40 A");
  const alone = designCurrent([{ direction: "backup", current: amperes(20) }])!;
  expect(workingLine(alone.current)).toBe("Ib = Ibu = 20 A");
});

const flat = { type: "twin-and-earth", insulation: "thermoplastic-70", method: "clipped-direct" } as const;

test("a rise by the table, by power factor, and of three phases", () => {
  const perMetre = tabulatedDrop(findDropColumn(gb.ac.drop, { ...flat, loadedConductors: 2 })!, 6e-6)!;
  const run = { length: metres(14), current: amperes(21.74), perMetre };
  expect(workingLine(acRunDrop(run))).toBe("ΔU = z · L · I = 7.3 mV/A/m · 14 m · 21.74 A = 2.22 V");
  expect(workingLine(acRunDrop({ ...run, powerFactor: ratio(0.9, "cosφ") }))).toBe(
    "ΔU = (cosφ · r + √(1 − cosφ²) · x) · L · I = (0.9 · 7.3 mV/A/m + √(1 − (0.9)²) · 0 mV/A/m) · 14 m · 21.74 A = 2 V",
  );
  expect(workingLine(phaseDrop(volts(4, "ΔU")))).toBe("ΔUph = ΔU / √3 = 4 V / √3 = 2.31 V");
});

test("a cable without a column is computed, and agrees with the tables within 2.5 %", () => {
  const question = { type: "multicore", insulation: "thermoplastic-70", method: "clipped-direct" } as const;
  for (const loadedConductors of [2, 3] as const) {
    const column = findDropColumn(gb.ac.drop, { ...question, loadedConductors })!;
    for (const size of [1.5, 2.5, 4, 6, 10, 16, 25, 35]) {
      const printed = tabulatedDrop(column, size * 1e-6)!.r.value;
      const computed = computedDrop({
        kind: { conductorClass: "class-2", coating: "plain" },
        crossSection: size * 1e-6,
        temperature: celsiusDegrees(70, "Tc"),
        reactance: iec.ac.reactance,
        loadedConductors,
      })!;
      // The tables round to two digits.
      expect(Math.abs(computed.r.value / printed - 1), `${size} mm², ${loadedConductors}`).toBeLessThan(0.025);
      expect(computed.x.value).toBeGreaterThan(0);
    }
  }
  expect(findDropColumn(iec.ac.drop, { ...question, loadedConductors: 2 })).toBeUndefined();
  expect(tabulatedDrop(findDropColumn(gb.ac.drop, { ...question, loadedConductors: 2 })!, 95e-6)).toBeUndefined();
});

test("three equal lines leave half the loop out, and the note says why", () => {
  const single = supplyRise(amperes(16), ohms(0.25), 1);
  const triple = supplyRise(amperes(16), ohms(0.25), 3);
  expect(triple.value).toBe(single.value / 2);
  expect(triple.note).toContain("neutral carries nothing");
});

test("a loop through two runs, as it is written by hand", () => {
  const run = (long: number) =>
    runLoop({ length: metres(long), line: ohmsPerKilometre(3.686, "r1"), protective: ohmsPerKilometre(8.87, "r2") });
  expect(workingLines(earthLoop(ohms(0.24, "Ze"), [run(10), run(20)]))).toEqual([
    "(R1 + R2) = L · (r1 + r2) = 10 m · (3.686 Ω/km + 8.87 Ω/km) = 0.126 Ω",
    "(R1 + R2) = L · (r1 + r2) = 20 m · (3.686 Ω/km + 8.87 Ω/km) = 0.251 Ω",
    "Zs = Ze + Σ (R1 + R2) = 0.24 Ω + (0.126 Ω + 0.251 Ω) = 0.617 Ω",
  ]);
});

test("a fault's energy and the conductor that stands it", () => {
  const fault = earthFaultCurrent(u0, ohms(1.15, "Zs"));
  const energy = letThrough(fault, seconds(0.4));
  expect(workingLine(energy)).toBe("I²t = If² · t = (200 A)² · 0.4 s = 16000 A²s");
  const k = adiabaticFactor(gb.ac.adiabaticFactors, "core", "thermoplastic-70")!;
  expect(workingLine(adiabaticSize(energy, k))).toBe("S = √(I²t) / k = √(16000 A²s) / 115 = 1.1 mm²");
  expect(adiabaticFactor(gb.ac.adiabaticFactors, "core", "pv-120")).toBeUndefined();
});

test("a breaker's class limits what a strong fault lets through, and is an assumption", () => {
  const limit = energyLimit(gb.ac.energyLimits, { curve: "B", breakingCapacity: 6000, rating: 32 })!;
  expect(limit.origin.kind).toBe("assumed");
  const strong = letThrough(amperes(1900), gb.ac.instantaneousTime);
  expect(limitedLetThrough(strong, limit).value).toBe(45_000);
  expect(limitedLetThrough(letThrough(amperes(300), gb.ac.instantaneousTime), limit).value).toBeCloseTo(9000, 6);
  // √18000 / 115 = 1.17 mm²: a 1.5 mm² protective conductor up to 3 kA, as in the tables of the trade (from memory).
  const breaker = { curve: "B", breakingCapacity: 6000, rating: 32 };
  expect(energyLimit(gb.ac.energyLimits, breaker, 1900)?.value).toBe(18_000);
  expect(energyLimit(gb.ac.energyLimits, breaker, 3100)?.value).toBe(45_000);
  expect(energyLimit(gb.ac.energyLimits, breaker, 6100)).toBeUndefined();
  expect(energyLimit(gb.ac.energyLimits, { curve: "B", breakingCapacity: 6000, rating: 50 })).toBeUndefined();
  expect(energyLimit(gb.ac.energyLimits, { curve: "D", breakingCapacity: 6000, rating: 16 })).toBeUndefined();
});

test("armour of 42 mm² has 3.3 mΩ/m when cold", () => {
  // Steel of 13.8e-8 Ω·m (IEC 60949, from memory): 13.8e-8 / 42e-6.
  const cold = armourResistance(squareMillimetres(42), celsiusDegrees(20, "Ta"));
  expect(cold.value).toBeCloseTo(3.286e-3, 6);
  expect(workingLine(cold)).toBe(
    "r2 = ρ20 · 1 mm² / S · (202 °C + Ta) / (202 °C + 20 °C) = 0.138 Ω/m · 1 mm² / 42 mm² · (202 °C + 20 °C) / (202 °C + 20 °C) = 3.29 Ω/km",
  );
});

test("the fault current behind a run takes the least sum of the two impedances", () => {
  const point = {
    voltage: u0,
    atOrigin: amperes(1900, "Ipf"),
    runs: [{ length: metres(20), perMetre: ohmsPerKilometre(3.08) }],
    lines: 1,
  } as const;
  expect(workingLines(faultCurrentBehind(point)).at(-1)).toBe(
    "Ik = U0 / √(Z0² + (Σ R)²) = 230 V / √((0.121 Ω)² + (0.123 Ω)²) = 1.33 kA",
  );
});

test("times end where the table does: distribution, larger ratings, and what needs no disconnection", () => {
  const { disconnection } = gb.ac;
  const base = { system: "TN", use: "final", voltage: u0, rating: amperes(40, "In") } as const;
  expect(disconnectionTime(disconnection, base)?.value).toBe(0.4);
  expect(disconnectionTime(disconnection, { ...base, fixedOnly: true })?.value).toBe(5);
  expect(disconnectionTime(disconnection, { ...base, rating: amperes(80, "In") })?.value).toBe(5);
  expect(disconnectionTime(disconnection, { ...base, voltage: volts(48) })).toBeUndefined();
  expect(disconnectionTime(disconnection, { ...base, supply: "dc", voltage: volts(100) })).toBeUndefined();
  expect(["TN-S", "TN-C-S", "TT", "IT"].map(earthingSystem)).toEqual(["TN", "TN", "TT", undefined]);
});

test("a fuse is looked up at the slowest table that is quick enough, and at its own voltage only", () => {
  const fuse = { category: "gG", rating: 32, voltage: 230 };
  const at = (time: number) => largestFuseLoop(gb.ac.fuseLoops, fuse, time)?.value;
  expect([at(5), at(1), at(0.4), at(0.2)]).toEqual([1.7, 0.99, 0.99, undefined]);
  expect(largestFuseLoop(gb.ac.fuseLoops, { ...fuse, voltage: 120 }, 5)).toBeUndefined();
  expect(largestFuseLoop(gb.ac.fuseLoops, { ...fuse, category: "gPV" }, 5)).toBeUndefined();
});

test("protective sizes at the edges, and no table of neutrals in the international set", () => {
  const by = (line: number) => workingLine(protectiveSize(squareMillimetres(line), gb.ac.protectiveSizes));
  expect(by(6)).toBe("S = Sline = 6 mm²");
  expect(by(25)).toBe("S = Sequal = 16 mm²");
  expect(by(50)).toBe("S = Sline / 2 = 50 mm² / 2 = 25 mm²");
  expect(bondingByNeutral(squareMillimetres(25, "SN"), iec.ac.protectiveSizes.bonding)).toBeUndefined();
});

test("fixed wiring is tested at 500 V up to 500 V (BS 7671 Table 64)", () => {
  const rows = [230, 400, 690].map((voltage) => {
    const { testVoltage, leastResistance } = circuitInsulationRow(gb.ac, voltage)!;
    return [testVoltage.value, leastResistance.value];
  });
  expect(rows).toEqual([
    [500, 1e6],
    [500, 1e6],
    [1000, 1e6],
  ]);
});
