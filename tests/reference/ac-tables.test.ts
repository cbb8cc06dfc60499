import { expect, test } from "vitest";
import { findDropColumn, tabulatedDrop } from "../../language-server/src/physics/ac-drop.js";
import { type AmpacityColumn, findColumn, lookUpFactor } from "../../language-server/src/physics/ampacity.js";
import {
  disconnectionTime,
  largestFuseLoop,
  largestLoop,
  largestLoopWithResidual,
  operatingCurrent,
} from "../../language-server/src/physics/disconnection.js";
import { adiabaticFactor } from "../../language-server/src/physics/fault-energy.js";
import {
  bondingByEarthing,
  bondingByNeutral,
  protectiveSize,
} from "../../language-server/src/physics/protective-size.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { amperes, milliamperes, squareMillimetres, volts } from "../physics/figures.js";
import { withJson } from "./published.js";

/** Every cell of the tables of fault protection and earthing, against the published ones. */

const u0 = volts(230, "U0");
const entries = (column: Record<string, number>) =>
  Object.entries(column).map(([key, value]) => [Number(key), value] as const);
const hundredths = (value: number) => Math.round(value * 100) / 100;

function loop(curve: string, rating: number, time: number): number {
  const operating = operatingCurrent(gb.ac.operatingMultiples, { curve, rating: amperes(rating, "In") }, time)!;
  return largestLoop(u0, gb.limits.minimumVoltageFactor, operating).value;
}

withJson("gb-values.json", (values) => {
  const { bs7671_app4: app4, bs7671_shock: shock } = values;

  const breakers = [
    ["B", 0.4, "41.3_B"],
    ["B", 5, "41.3_B"],
    ["C", 0.4, "41.3_C"],
    ["C", 5, "41.3_C"],
    ["D", 0.4, "41.3_D_0.4s"],
    ["D", 5, "41.3_D_5s"],
  ] as const;
  test.each(breakers)(
    "BS 7671 Table 41.3, type %s at %s s (source mz of gb-values.json, a page of loop impedances; type D at 5 s from the rule)",
    (curve, time, key) => {
      const printed = entries(shock[key]);
      expect(printed).toHaveLength(12);
      for (const [rating, ohms] of printed) expect(hundredths(loop(curve, rating, time)), `${rating} A`).toBe(ohms);
    },
  );

  test("BS 7671 Table 41.5, RCDs (from memory)", () => {
    for (const [residual, ohms] of Object.entries(shock["41.5_RCD_Zs_ohm"])) {
      if (typeof ohms !== "number") continue;
      const rated = milliamperes(Number.parseFloat(residual));
      expect(Math.round(largestLoopWithResidual(gb.limits.touchVoltage, rated).value), residual).toBe(ohms);
    }
  });

  const times = [
    ["TN", "ac", "TN_ac"],
    ["TT", "ac", "TT_ac"],
    ["TN", "dc", "TN_dc"],
    ["TT", "dc", "TT_dc"],
  ] as const;
  test.each(times)("BS 7671 Table 41.1, %s %s (a.c. at 230 V read, the rest from memory)", (system, supply, key) => {
    const printed = Object.entries<number>(shock["41.1_times_s"][key]);
    expect(printed.length).toBeGreaterThan(2);
    for (const [band, seconds] of printed) {
      const highest = band.startsWith(">") ? 1000 : Number(band.split("-")[1]);
      const lowest = band.startsWith(">") ? 401 : Number(band.split("-")[0]) + 1;
      for (const voltage of [lowest, highest]) {
        const circuit = { system, supply, use: "final", voltage: volts(voltage), rating: amperes(20, "In") } as const;
        expect(disconnectionTime(gb.ac.disconnection, circuit)?.value, `${voltage} V`).toBe(seconds);
      }
    }
  });

  test("distribution circuits disconnect in 5 s on TN and 1 s on TT (BS 7671 411.3.2.3 and 411.3.2.4)", () => {
    for (const system of ["TN", "TT"] as const) {
      const circuit = { system, use: "distribution", voltage: u0, rating: amperes(20, "In") } as const;
      const time = disconnectionTime(gb.ac.disconnection, circuit);
      expect(time?.value).toBe(shock["41.1_times_s"].distribution[system]);
    }
  });

  test("BS 7671 Tables 54.2, 54.3, 54.4 and 43.1, every k for copper up to 300 mm² and for armour", () => {
    const places = {
      "54.3_core_in_cable_copper": "core",
      "54.2_separate_not_bunched_copper": "separate",
      "54.4_steel_armour": "armour",
      "43.1_live_copper": "live",
    } as const;
    let compared = 0;
    for (const [key, place] of Object.entries(places)) {
      for (const [conductor, printed] of Object.entries<number>(shock.k[key])) {
        const [temperature, material, bound] = conductor.split("_");
        if (bound === "gt300" || (material === "thermoplastic" && temperature !== "70C")) continue;
        const insulation = `${material}-${Number.parseInt(temperature!, 10)}`;
        expect(adiabaticFactor(gb.ac.adiabaticFactors, place, insulation)?.value, `${key} ${conductor}`).toBe(printed);
        compared++;
      }
    }
    expect(compared).toBe(gb.ac.adiabaticFactors.size);
  });

  test("BS 7671 Table 54.7 (Linsley, Basic Electrical Installation Work, p. 250)", () => {
    expect(shock["54.7"]).toMatchObject({ "S<=16": "S", "16<S<=35": "16", "S>35": "S/2" });
    const sizes = [1, 2.5, 16, 25, 35, 50, 95].map(
      (line) => protectiveSize(squareMillimetres(line), gb.ac.protectiveSizes).value * 1e6,
    );
    expect(sizes.map(hundredths)).toEqual([1, 2.5, 16, 16, 16, 25, 47.5]);
  });

  test("BS 7671 Table 54.8, main bonding by the supply's neutral", () => {
    for (const [band, printed] of Object.entries<number | string>(shock["54.8_PME_main_bonding_mm2_cu"])) {
      if (typeof printed !== "number") continue;
      const bounds = band.match(/\d+/g)!.map(Number);
      const sizes = band.startsWith("neutral<=")
        ? bounds
        : band.startsWith(">")
          ? [bounds[0]! + 1]
          : [bounds[0]! + 1, bounds[1]!];
      for (const neutral of sizes) {
        const size = bondingByNeutral(squareMillimetres(neutral, "SN"), gb.ac.protectiveSizes.bonding)!;
        expect(hundredths(size.value * 1e6), `${neutral} mm²`).toBe(printed);
      }
    }
  });

  test("BS 7671 544.1.1: half the earthing conductor, at least 6, at most 25 mm² (Certsure pocket guide 13)", () => {
    const sizes = [6, 10, 16, 35, 50, 70].map(
      (earthing) => bondingByEarthing(squareMillimetres(earthing), gb.ac.protectiveSizes.bonding).value * 1e6,
    );
    expect(sizes.map(hundredths)).toEqual([6, 6, 8, 17.5, 25, 25]);
  });

  test("BS 7671 Table 52.2, thermal insulation by length (0.51 and 0.5 read)", () => {
    for (const [length, printed] of Object.entries<number | string>(app4.table_52_2_insulation)) {
      if (typeof printed !== "number") continue;
      const metres = Number.parseInt(length.replace(">=", ""), 10) / 1000;
      expect(lookUpFactor(gb.ac.thermalInsulation, metres)?.value, length).toBe(printed);
    }
    expect(lookUpFactor(gb.ac.thermalInsulation, 0.41)?.value).toBe(0.5);
    expect(lookUpFactor(gb.ac.thermalInsulation, 12)?.value).toBe(0.5);
  });

  test("the boundary of G98 is 16 A itself, the supply ends at 253 V, inverters leave at 262.2 V", () => {
    expect(gb.limits.notifyCurrent.value).toBe(values.gb_grid.G98_limit.A_per_phase);
    expect(gb.limits.highestSupplyVoltage.value).toBe(values.gb_grid.voltage.max);
    expect(gb.limits.overVoltageTrip.value).toBe(values.gb_grid.G98_protection.OV1[0]);
  });

  test("voltage drop columns stand for the words of a design (BS 7671 Tables 4D1B, 4D2B, 4D5, 4E1B, 4E2B)", () => {
    const cell = (type: string, insulation: string, method: string, loadedConductors: 2 | 3, size: number) => {
      const column = findDropColumn(gb.ac.drop, { type, insulation, method, loadedConductors })!;
      const { r, x, z } = tabulatedDrop(column, size * 1e-6)!;
      return { r: r.value * 1000, x: x.value * 1000, z: z.value * 1000 };
    };
    const close = (found: Record<string, number>, printed: Record<string, number>) => {
      for (const [part, value] of Object.entries(printed)) expect(found[part], part).toBeCloseTo(value, 9);
    };
    close(cell("singles", "thermoplastic-70", "conduit-in-air", 2, 25), app4["4D1B"].ac1_AB[25]);
    close(cell("tails", "thermoplastic-70", "clipped-direct", 2, 25), app4["4D1B"].ac1_C_touching[25]);
    close(cell("singles", "thermoplastic-70", "trunking", 3, 35), app4["4D1B"].ac3_AB[35]);
    close(cell("multicore", "thermoplastic-70", "clipped-direct", 3, 25), app4["4D2B"].ac3[25]);
    close(cell("singles", "thermosetting-90", "conduit-in-air", 2, 25), app4["4E1B"].dc_and_ac1[25].AB);
    close(cell("singles", "thermosetting-90", "clipped-direct", 2, 35), app4["4E1B"].dc_and_ac1[35].C_touching);
    close(cell("multicore", "thermosetting-90", "free-in-air", 2, 35), app4["4E2B"].ac1_2c[35]);
    close(cell("armoured", "thermosetting-90", "buried", 2, 25), app4["4E4B"].ac1_2c[25]);
    for (const [size, printed] of entries(app4["4D5"].mV_A_m))
      close(cell("twin-and-earth", "thermoplastic-70", "clipped-direct", 2, size), { z: printed });
  });

  const singleCore = [
    ["conduit-in-insulated-wall", 2, "A_1ph"],
    ["conduit-in-insulated-wall", 3, "A_3ph"],
    ["conduit-in-air", 2, "B_1ph"],
    ["conduit-in-air", 3, "B_3ph"],
    ["clipped-direct", 2, "C_1ph"],
    ["clipped-direct", 3, "C_3ph"],
  ] as const;
  test.each(singleCore)(
    "BS 7671 Table 4E1A as %s, %s loaded: every cell as read (sources cse1a and don of gb-values.json, reprints by cable suppliers)",
    (method, loadedConductors, key) => {
      const question = { type: "singles", insulation: "thermosetting-90", method, loadedConductors } as const;
      checkCells(findColumn(gb.ampacity, question)!, entries(app4["4E1A"][key]), () => "read");
    },
  );

  const flat = [
    ["conduit-in-insulated-wall", "A"],
    ["clipped-direct", "C"],
    ["in-insulation", "103"],
  ] as const;
  test.each(flat)("BS 7671 Table 4D5 as %s: 1 and 1.5 mm² read, the rest from memory (E. Palmer)", (method, key) => {
    const question = { type: "twin-and-earth", insulation: "thermoplastic-70", method, loadedConductors: 2 } as const;
    checkCells(findColumn(gb.ampacity, question)!, entries(app4["4D5"][key]), (size) =>
      size <= 1.5 ? "read" : "memory",
    );
  });

  test("places that PAS 63100 section 6.5 excludes, and the one it prefers", () => {
    const excluded: string[] = values.battery["PAS63100_2024_6.5"].excluded;
    const words = excluded.join("; ");
    for (const [place, printed] of [
      ["loft", /lofts/],
      ["sleeping-room", /sleeping/],
      ["escape-route", /escape routes/],
    ] as const) {
      expect(words).toMatch(printed);
      expect(gb.ac.batteryPlaces.get(place)?.verdict).toBe("excluded");
    }
    expect(gb.ac.batteryPlaces.get("outdoors")?.verdict).toBe("preferred");
    expect(gb.ac.batteryPlaces.get("garage")).toBeUndefined();
  });
});

function checkCells(
  column: AmpacityColumn,
  printed: readonly (readonly [number, number])[],
  basis: (size: number) => string,
): void {
  expect(printed.length).toBeGreaterThan(5);
  for (const [size, current] of printed) {
    const cell = column.ratings.get(size)!;
    expect([cell.value, cell.origin.source?.basis], `${size} mm²`).toEqual([current, basis(size)]);
  }
}

// A published page of the 2008 edition (pdfcoffee, Appendix 3) has Cmin = 1 and older fuses: never less than these.
test("largest Zs of gG fuses are from memory, and no larger than the printed ones of 2008 at Cmin 0.95", () => {
  const printed = [
    [6, 8.52],
    [10, 5.11],
    [16, 2.7],
    [20, 1.77],
    [25, 1.44],
    [32, 1.04],
  ] as const;
  for (const [rating, ohms] of printed) {
    const found = largestFuseLoop(gb.ac.fuseLoops, { category: "gG", rating, voltage: 230 }, 0.4)!;
    expect(found.origin.source?.basis).toBe("memory");
    expect(found.value, `${rating} A`).toBeLessThanOrEqual(ohms * 0.95 + 0.005);
  }
});
