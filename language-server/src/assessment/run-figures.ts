import type { PvArray } from "../circuit/array.js";
import type { Line, Plant } from "../circuit/plant.js";
import type { Run } from "../design/things.js";
import { shareOfVoltage } from "../physics/ac-drop.js";
import type { Derived } from "../physics/figure.js";
import { standardMaxPowerVoltage } from "../physics/string-voltage.js";
import { relativeDrop, runLoss } from "../physics/voltage-drop.js";
import { isBalanced } from "../rules/ac-rise.js";
import { dropAlong } from "../rules/ac-run-drop.js";
import { moduleOf, modulesInSeries } from "../rules/array-figures.js";
import { unitsThrough } from "../rules/feeding-units.js";
import { type Judge, NotKnown } from "../rules/judge.js";
import { dropStep } from "../rules/path-drop.js";
import { exportCurrent } from "../rules/port-currents.js";
import { cableOf } from "../rules/run-facts.js";
import { treeAt } from "../rules/supply-way.js";
import type { Assessment } from "./assessment.js";

/** What one run takes from the energy that passes it. */
export interface RunFigures {
  /** `drop` from strings to the inverter; `rise` from the supply to what feeds in. */
  readonly is: "drop" | "rise";
  /** V; to neutral on the a.c. side. */
  readonly voltage: Derived;
  /** As a share of the string's voltage at maximum power, or of the supply's nominal voltage. */
  readonly share?: Derived;
  /** W; of d.c. runs. */
  readonly loss?: Derived;
}

interface Carriers {
  readonly arrays: ReadonlyMap<string, readonly [PvArray, Run]>;
  readonly lines: ReadonlyMap<string, readonly [Plant, Line]>;
}

const carriers = new WeakMap<Assessment, Carriers>();

/**
 * Worked out when somebody asks, with the sums of the rules that judge drop and rise; undefined for a run that carries
 * nothing of either, and where something that the sum needs is not stated.
 */
export function runFigures(assessment: Assessment, id: string): RunFigures | undefined {
  const { arrays, lines } = carriersOf(assessment);
  const array = arrays.get(id);
  const line = lines.get(id);
  try {
    if (array) return dropOf(...array, assessment.judge);
    return line && riseOf(...line, assessment.judge);
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

function dropOf(array: PvArray, run: Run, judge: Judge): RunFigures {
  const { drop, loaded } = dropStep(run, cableOf(run), array, judge);
  const string = array.runs.get(run)?.[0];
  const voltage = string && judge.quantity(moduleOf(string), "voltage-at-max-power");
  const share = voltage && relativeDrop(drop, standardMaxPowerVoltage({ modules: modulesInSeries(string), voltage }));
  return { is: "drop", voltage: drop, share, loss: runLoss(loaded) };
}

function riseOf(plant: Plant, line: Line, judge: Judge): RunFigures | undefined {
  const tree = treeAt(plant, line.root);
  const units = unitsThrough(tree, line.far);
  const current = units.length > 0 ? exportCurrent(units, tree, judge) : undefined;
  if (!current) return undefined;
  const rise = dropAlong({ run: line.run, current, loadedConductors: isBalanced(units, tree, judge) ? 3 : 2 }, judge);
  const nominal = judge.quantity(tree.root.item, "voltage");
  return { is: "rise", voltage: rise, share: nominal && shareOfVoltage(rise, nominal) };
}

/** By the run's name: what was kept from an earlier version holds the run of that version. */
function carriersOf(assessment: Assessment): Carriers {
  let known = carriers.get(assessment);
  if (!known) {
    const arrays = new Map<string, readonly [PvArray, Run]>();
    const lines = new Map<string, readonly [Plant, Line]>();
    for (const zone of assessment.zones)
      for (const array of zone.arrays) for (const run of array.runs.keys()) arrays.set(run.id, [array, run]);
    for (const plant of assessment.plants) for (const line of plant.lines) lines.set(line.run.id, [plant, line]);
    known = { arrays, lines };
    carriers.set(assessment, known);
  }
  return known;
}
