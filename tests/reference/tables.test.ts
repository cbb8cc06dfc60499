import { expect, test } from "vitest";
import { type AmbientRule, ambientFactor, type SizeTable } from "../../language-server/src/physics/ampacity.js";
import { coldFactor } from "../../language-server/src/physics/cold-factors.js";
import { copperFactor } from "../../language-server/src/physics/conductor.js";
import { tableResistance } from "../../language-server/src/physics/conductor-tables.js";
import { celsius } from "../../language-server/src/physics/constants.js";
import { type DropTable, dropTables } from "../../language-server/src/rules/gb/appendix-4-drop.js";
import * as factors from "../../language-server/src/rules/gb/appendix-4-factors.js";
import * as thermoplastic from "../../language-server/src/rules/gb/appendix-4-thermoplastic.js";
import * as thermosetting from "../../language-server/src/rules/gb/appendix-4-thermosetting.js";
import { iec } from "../../language-server/src/rules/iec/index.js";
import * as pv from "../../language-server/src/rules/iec/pv-cable.js";
import { celsiusDegrees } from "../physics/figures.js";
import { off, withJson } from "./published.js";

/** Every cell of the tables that the program carries, against the published ones. */

type Column = Record<string, number>;
const entries = (column: Column) => Object.entries(column).map(([key, value]) => [Number(key), value] as const);
const asColumn = (table: SizeTable) => Object.fromEntries(table);

withJson("gb-values.json", (values) => {
  const conductors = [
    ["class-2", "plain", "class2_plain"],
    ["class-2", "tinned", "class2_metal_coated"],
    ["class-5", "plain", "class5_plain"],
    ["class-5", "tinned", "class5_metal_coated"],
  ] as const;
  test.each(conductors)("IEC 60228 resistances at 20 °C, %s %s", (conductorClass, coating, key) => {
    for (const [size, printed] of entries(values.iec60228[key].values)) {
      const found = tableResistance({ conductorClass, coating }, size * 1e-6)!;
      expect(found.value * 1000, `${size} mm²`).toBeCloseTo(printed, 10);
    }
  });

  test("copper from 20 °C within 0.5 % of the printed k_t (source uec of gb-values.json, a cable maker's table after IEC 60228)", () => {
    for (const [temperature, printed] of entries(values.iec60228.temperature.kt_table_to_reduce_to_20C)) {
      expect(off(1 / copperFactor(celsius(temperature)), printed), `${temperature} °C`).toBeLessThan(0.005);
    }
  });

  test("cold factors of crystalline silicon (UTE C 15-712-1 as printed by source gk of gb-values.json, a teaching site)", () => {
    const bands = Object.entries<number>(values.pv_712_62548.uoc_max.method2_table_crystalline);
    expect(bands).toHaveLength(13);
    for (const [band, printed] of bands) {
      for (const end of band.split("..").map(Number)) {
        expect(coldFactor(iec.coldFactors, celsius(end))?.value, `${end} °C`).toBe(printed);
      }
    }
  });

  const pvTables = [
    ["single_free_in_air", pv.singleFreeInAir],
    ["single_on_surface", pv.singleOnSurface],
    ["two_adjacent_on_surface", pv.twoTouchingOnSurface],
  ] as const;
  test.each(pvTables)("EN 50618 Table A.3, %s", (key, table) => {
    expect(asColumn(table)).toEqual(values.en50618[key].values);
  });

  const app4 = values.bs7671_app4;
  const capacities = { ...thermoplastic, ...thermosetting };
  test.each(Object.entries(capacities))("BS 7671 Appendix 4, %s", (name, columns) => {
    const printed = app4[name.replace("table", "")];
    for (const [column, table] of Object.entries<SizeTable>(columns)) {
      const key = column.replace("method", "").replace(/Two|Three/, "");
      const suffixes = column.endsWith("Two") ? ["_1ph", "_2c"] : column.endsWith("Three") ? ["_3ph", "_3c"] : [""];
      const cells = suffixes.map((suffix) => printed[key + suffix]).find(Boolean);
      expect(asColumn(table), column).toEqual(cells);
    }
  });

  type Printed = Record<string, number | { r: number; x: number; z: number } | Record<string, unknown>>;
  const drops: readonly [keyof typeof dropTables, Printed, string?][] = [
    ["singlesThermoplasticDc", app4["4D1B"].dc],
    ["singlesThermoplasticTwoEnclosed", app4["4D1B"].ac1_AB],
    ["singlesThermoplasticTwoClipped", app4["4D1B"].ac1_C_touching],
    ["singlesThermoplasticThreeEnclosed", app4["4D1B"].ac3_AB],
    ["multicoreThermoplasticTwo", app4["4D2B"].ac1_2c],
    ["multicoreThermoplasticThree", app4["4D2B"].ac3],
    ["flatTwin", app4["4D5"].mV_A_m],
    ["singlesThermosettingDc", app4["4E1B"].dc_and_ac1, "dc"],
    ["singlesThermosettingTwoEnclosed", app4["4E1B"].dc_and_ac1, "AB"],
    ["singlesThermosettingTwoClipped", app4["4E1B"].dc_and_ac1, "C_touching"],
    ["singlesThermosettingThreeEnclosed", app4["4E1B"].ac3_AB],
    ["multicoreThermosettingTwo", app4["4E2B"].ac1_2c],
    ["multicoreThermosettingThree", app4["4E2B"].ac3],
    ["armouredThermosettingTwo", app4["4E4B"].ac1_2c],
  ];
  test.each(drops)("BS 7671 Appendix 4 voltage drop, %s", (name, printed, part) => {
    const column: DropTable = dropTables[name];
    expect(column.rows.size).toBe(Object.keys(printed).length);
    for (const [size, cell] of Object.entries(printed)) {
      const inner = typeof cell === "number" || part === undefined ? cell : cell[part as keyof typeof cell];
      const expected = typeof inner === "number" ? { r: inner, x: 0, z: inner } : inner;
      expect(column.rows.get(Number(size)), `${size} mm²`).toEqual(expected);
    }
  });

  test.each([
    ["air_70C", factors.air70],
    ["air_90C", factors.air90],
  ])("the heat balance gives every cell of BS 7671 Table 4B1, %s", (key, rule) => {
    for (const [ambient, printed] of entries(app4["4B1"][key])) {
      expect(rounded(ambient, rule), `${ambient} °C`).toBe(printed);
    }
  });

  test("the heat balance gives every factor of 2 PfG 1169", () => {
    for (const [ambient, printed] of entries(values.en50618.ambient_factor_2pfg1169.values)) {
      expect(Math.abs(rounded(ambient, pv.pvAmbient) - printed), `${ambient} °C`).toBeLessThanOrEqual(0.0101);
    }
  });

  test("the heat balance is never more generous than EN 50618 Table A.4", () => {
    for (const [ambient, printed] of entries(values.en50618.ambient_factor_en50618_A4.values)) {
      expect(ambientFactor(celsiusDegrees(ambient, "Ta"), pv.pvAmbient).value).toBeLessThanOrEqual(printed);
    }
  });

  test.each([
    ["bunched_or_enclosed", factors.bunched],
    ["single_layer_on_wall_C", factors.singleLayer],
    ["perforated_tray_E_F", factors.onTray],
  ] as const)("BS 7671 Table 4C1, %s", (key, table) => {
    expect(table.rows.map(({ upTo, factor }) => [upTo, factor.value])).toEqual(entries(app4["4C1"][key]));
  });

  test("impulse withstand voltages by array voltage (IEC 60364-7-712, from memory)", () => {
    const printed = Object.entries<Record<string, number>>(values.pv_712_62548.spd.Uw_kV_by_Uoc_max).filter(
      ([key]) => Number(key) > 0,
    );
    const carried = iec.impulseWithstand.rows.map(({ upTo, inverter, moduleBasic, moduleReinforced }) => [
      String(upTo),
      {
        module_B: moduleBasic.value / 1000,
        module_A: moduleReinforced.value / 1000,
        inverter: inverter.value / 1000,
      },
    ]);
    expect(carried).toEqual(printed);
  });
});

withJson("us-values.json", (values) => {
  test("cold factors of crystalline silicon (NEC Table 690.7(A) as adopted in California)", () => {
    for (const [high, low, printed] of values["690.7"].table_690_7_A.rows_ambient_degC_hi_lo_factor) {
      for (const end of [high, low]) {
        expect(coldFactor(iec.coldFactors, celsius(end))?.value, `${end} °C`).toBe(printed);
      }
    }
  });

  test("the heat balance at the upper end of each row of NEC Table 310.15(B)(1)", () => {
    const table = values["310.15(B)(1)_30C"];
    for (const [row, [, high]] of table.rows_degC_lo_hi.entries()) {
      for (const [index, conductor] of table.columns_degC.entries()) {
        const printed = table.factors[row][index];
        if (printed === null || high < 30) continue;
        const rule = { ...factors.air70, conductor: celsius(conductor), coolest: undefined };
        expect(rounded(high, rule), `${high} °C, ${conductor} °C conductor`).toBe(printed);
      }
    }
  });
});

function rounded(ambient: number, rule: AmbientRule): number {
  return Math.round(ambientFactor(celsiusDegrees(ambient, "Ta"), rule).value * 100) / 100;
}
