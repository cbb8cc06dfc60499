import { expect, test } from "vitest";
import { boltzmann, celsius, elementaryCharge } from "../../language-server/src/physics/constants.js";
import { type ModuleModel, parametersAt } from "../../language-server/src/physics/module-model.js";
import {
  currentAt,
  type DiodeParameters,
  maxPowerPoint,
  openCircuitVoltage,
  shortCircuitCurrent,
} from "../../language-server/src/physics/single-diode.js";
import { fitModule } from "../../language-server/src/physics/single-diode-fit.js";
import { numbers, off, type Row, withCsv } from "./published.js";

/** The single-diode model against curves and modules that others have computed. */

function curve(read: (name: string) => number): DiodeParameters {
  const thermal = (boltzmann * read("Temperature")) / elementaryCharge;
  return {
    photocurrent: read("photocurrent"),
    saturationCurrent: read("saturation_current"),
    seriesResistance: read("resistance_series"),
    shuntResistance: read("resistance_shunt"),
    idealityVoltage: read("n") * read("cells_in_series") * thermal,
  };
}

withCsv("precise-iv-curves.csv", (rows) => {
  test("64 curves to 1 part in 10¹² (pvlib test data, solved to more than 16 digits, BSD-3)", () => {
    expect(rows).toHaveLength(64);
    for (const row of rows) {
      const read = numbers(row);
      const p = curve(read);
      const { voltage, current } = maxPowerPoint(p);
      const found = {
        v_oc: openCircuitVoltage(p),
        i_sc: shortCircuitCurrent(p),
        v_mp: voltage,
        i_mp: current,
        p_mp: voltage * current,
        i_x: currentAt(p, read("v_oc") / 2),
        i_xx: currentAt(p, (read("v_oc") + read("v_mp")) / 2),
      };
      for (const [name, value] of Object.entries(found)) {
        expect(off(value, read(name)), `curve ${row.set}/${row.Index}, ${name}`).toBeLessThan(1e-12);
      }
    }
  });
});

test("one curve of the same set typed in, so that the solver is held to it on every machine (pvlib test data, BSD-3)", () => {
  const idealityVoltage = (1.01 * 72 * boltzmann * 298.15) / elementaryCharge;
  const p = {
    photocurrent: 1,
    saturationCurrent: 5e-10,
    seriesResistance: 0.1,
    shuntResistance: 300,
    idealityVoltage,
  };
  expect(off(openCircuitVoltage(p), 39.7481073798697)).toBeLessThan(1e-12);
  expect(off(shortCircuitCurrent(p), 0.99966677771328)).toBeLessThan(1e-12);
  expect(off(maxPowerPoint(p).voltage, 33.93689431545555)).toBeLessThan(1e-12);
  expect(off(maxPowerPoint(p).current, 0.84612386091448)).toBeLessThan(1e-12);
});

const quantities = ["Voc", "Isc", "Vmp", "Imp", "Pmp"] as const;

function computed(model: ModuleModel, row: Row): Record<(typeof quantities)[number], number> {
  const read = numbers(row);
  const p = parametersAt(model, read("G"), celsius(read("T_cell")));
  const { voltage, current } = maxPowerPoint(p);
  return {
    Voc: openCircuitVoltage(p),
    Isc: shortCircuitCurrent(p),
    Vmp: voltage,
    Imp: current,
    Pmp: voltage * current,
  };
}

function fitOf(module: Row) {
  const read = numbers(module);
  return fitModule({
    openCircuitVoltage: read("V_oc_ref"),
    shortCircuitCurrent: read("I_sc_ref"),
    voltageAtMaxPower: read("V_mp_ref"),
    currentAtMaxPower: read("I_mp_ref"),
    voltageCoefficient: read("beta_oc"),
    currentCoefficient: read("alpha_sc"),
  });
}

withCsv("desoto-modules.csv", (modules) => {
  withCsv("desoto-reference.csv", (reference) => {
    const moduleOf = new Map(modules.map((module) => [module.idx, module]));

    test("20 modules at 18 conditions from the table's own parameters, to the 8 digits printed (De Soto model as pvlib computes it, BSD-3)", () => {
      expect(reference).toHaveLength(360);
      for (const row of reference) {
        const read = numbers(moduleOf.get(row.idx)!);
        const model = {
          reference: {
            photocurrent: read("I_L_ref"),
            saturationCurrent: read("I_o_ref"),
            seriesResistance: read("R_s"),
            shuntResistance: read("R_sh_ref"),
            idealityVoltage: read("a_ref"),
          },
          currentCoefficient: read("alpha_sc"),
        };
        const found = computed(model, row);
        for (const name of quantities) {
          const published = Number(row[`${name}_desoto`]);
          expect(off(found[name], published), `${row.idx} ${row.T_cell} °C ${row.G} W/m² ${name}`).toBeLessThan(1e-7);
        }
      }
    });

    test("modules that a single diode meets: our fit of the nameplate gives the published curves to 1 part in 10⁷ (fit by pvlib, BSD-3)", () => {
      const exact = modules.filter((module) => module.refit_method?.startsWith("library"));
      expect(exact).toHaveLength(15);
      for (const module of exact) {
        const fit = fitOf(module)!;
        expect(fit.exact).toBe(true);
        for (const row of reference.filter(({ idx }) => idx === module.idx)) {
          const found = computed(fit, row);
          for (const name of quantities) {
            const published = Number(row[`${name}_refit`]);
            expect(off(found[name], published), `${row.idx} ${row.T_cell} °C ${name}`).toBeLessThan(1e-7);
          }
        }
      }
    });

    // Their data ask for a negative shunt resistance. The published fit then spreads the miss over all equations; ours
    // keeps Uoc, Isc, the power point and the coefficient and leaves the shunt out. Either is a choice, so they differ.
    const rounded = [
      ["Voc", 0.002],
      ["Isc", 0.006],
      ["Vmp", 0.015],
      ["Imp", 0.006],
      ["Pmp", 0.012],
    ] as const;
    test("modules that no single diode meets: our nearest curve against pvlib's bounded least squares, Uoc within 0.2 %, Isc 0.6 %, power 1.2 %", () => {
      const near = modules.filter((module) => module.refit_method?.startsWith("bounded"));
      expect(near).toHaveLength(4);
      for (const module of near) {
        const fit = fitOf(module)!;
        expect(fit.exact).toBe(false);
        expect(off(openCircuitVoltage(fit.reference), Number(module.V_oc_ref))).toBeLessThan(1e-9);
        expect(off(shortCircuitCurrent(fit.reference), Number(module.I_sc_ref))).toBeLessThan(1e-9);
        for (const row of reference.filter(({ idx }) => idx === module.idx)) {
          const found = computed(fit, row);
          for (const [name, tolerance] of rounded) {
            const published = Number(row[`${name}_refit`]);
            expect(off(found[name], published), `${row.idx} ${row.T_cell} °C ${name}`).toBeLessThan(tolerance);
          }
        }
      }
    });

    test("the straight line of Uoc by temperature lies within 0.15 % of our fit, on the high side, wherever the fit is exact", () => {
      for (const row of reference.filter(({ G }) => G === "1000")) {
        const fit = fitOf(moduleOf.get(row.idx)!)!;
        if (!fit.exact || !row.technology?.endsWith("c-Si")) continue;
        const above = Number(row.Voc_linear) / computed(fit, row).Voc - 1;
        expect(above, `${row.idx} ${row.T_cell} °C`).toBeGreaterThan(-1e-6);
        expect(above, `${row.idx} ${row.T_cell} °C`).toBeLessThan(0.0015);
      }
    });
  });
});
