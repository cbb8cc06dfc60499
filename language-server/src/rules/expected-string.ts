import type { PartDeclaration } from "../design/model.js";
import type { Item, Part, Reading } from "../design/things.js";
import { dataSheetOf } from "../physics/data-sheet.js";
import { expectedCurrent, expectedVoltageInFullSun, modelledVoltage, rearLight } from "../physics/expected-reading.js";
import type { Derived, Figure } from "../physics/figure.js";
import { parallelCurrent } from "../physics/short-circuit.js";
import { type FittedModule, fitModule } from "../physics/single-diode-fit.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";

/** What a meter should have read on strings in the light and at the cell temperature of a reading. */

/**
 * Open-circuit voltage of a string, V: by the single-diode model in the light that was measured; by temperature alone,
 * in full sun, where no irradiance is stated. Throws NotKnown.
 */
export function expectedOpenVoltage(string: Item, reading: Reading, judge: Judge): Derived {
  const module = moduleOf(string);
  const modules = modulesInSeries(string);
  const [voltage, coefficient, cell] = judge.need(
    [module, "open-circuit-voltage"],
    [module, "open-circuit-voltage-coefficient"],
    [reading, "cell-temperature"],
  );
  const irradiance = judge.quantity(reading, "irradiance");
  const fitted = irradiance && irradiance.value > 0 ? modelOf(module, judge) : undefined;
  if (irradiance && fitted) return modelledVoltage(modules, fitted, irradiance, cell);
  return expectedVoltageInFullSun({ modules, voltage }, coefficient, cell);
}

const models = new WeakMap<PartDeclaration, { readonly model?: FittedModule }>();

/** The single-diode model of a module: fitted once for as long as its sheet stays the same. Throws NotKnown. */
export function modelOf(module: Part, judge: Judge): FittedModule | undefined {
  // The band gap of the model is that of crystalline silicon.
  if (judge.word(module, "technology") === "thin-film") return undefined;
  let known = models.get(module.declaration);
  if (!known) {
    const [
      openCircuitVoltage,
      shortCircuitCurrent,
      voltageAtMaxPower,
      currentAtMaxPower,
      openCircuitVoltageCoefficient,
      shortCircuitCurrentCoefficient,
    ] = judge.need(
      [module, "open-circuit-voltage"],
      [module, "short-circuit-current"],
      [module, "voltage-at-max-power"],
      [module, "current-at-max-power"],
      [module, "open-circuit-voltage-coefficient"],
      [module, "short-circuit-current-coefficient"],
    );
    const sheet = dataSheetOf({
      openCircuitVoltage,
      shortCircuitCurrent,
      voltageAtMaxPower,
      currentAtMaxPower,
      openCircuitVoltageCoefficient,
      shortCircuitCurrentCoefficient,
    });
    known = { model: fitModule(sheet) };
    models.set(module.declaration, known);
  }
  return known.model;
}

/** Short-circuit current of strings together, A: the least, and the most where light on the rear adds to it. */
export interface ExpectedCurrent {
  readonly least: Figure;
  readonly most: Figure;
}

export function expectedShortCurrent(strings: readonly Item[], reading: Reading, judge: Judge): ExpectedCurrent {
  const [irradiance, cell] = judge.need([reading, "irradiance"], [reading, "cell-temperature"]);
  if (strings.length === 0) throw new NotKnown([], "no string feeds what was measured");
  const each = strings.map((string) => {
    const module = moduleOf(string);
    const [current, coefficient] = judge.need(
      [module, "short-circuit-current"],
      [module, "short-circuit-current-coefficient"],
    );
    const least = expectedCurrent(current, coefficient, irradiance, cell);
    const gain = judge.quantity(module, "bifacial-gain");
    return { least, most: gain ? rearLight(least, gain) : least };
  });
  return { least: together(each.map(({ least }) => least)), most: together(each.map(({ most }) => most)) };
}

function together(currents: readonly Figure[]): Figure {
  const [only, another] = currents;
  return only && !another ? only : parallelCurrent(currents, "Isc,exp");
}
