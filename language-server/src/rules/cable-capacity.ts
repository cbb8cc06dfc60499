import type { Part, Run } from "../design/things.js";
import {
  type AmpacityColumn,
  ambientFactor,
  type CapacityFactors,
  currentCapacity,
  findColumn,
  tabulatedCurrent,
} from "../physics/ampacity.js";
import { formatValue } from "../physics/display.js";
import type { Derived } from "../physics/figure.js";
import { groupingFactor } from "../physics/grouping.js";
import { type Judge, NotKnown } from "./judge.js";
import { laidAs } from "./laid-as.js";
import { needFacts } from "./run-facts.js";

/** What a cable carries as it is laid, and the table it was read off. */
export interface Capacity {
  /** Iz, A. */
  readonly current: Derived;
  readonly column: AmpacityColumn;
  readonly factors: CapacityFactors;
}

/**
 * Current-carrying capacity of a run if it were laid in this cable; in a three-phase run three conductors are loaded.
 * Throws NotKnown naming what the tables ask for, or saying that the rule set has no table for it.
 */
export function capacityOf(run: Run, cable: Part, judge: Judge, loadedConductors: 2 | 3 = 2): Capacity {
  needFacts(
    judge,
    [cable, "type"],
    [cable, "insulation"],
    [cable, "conductor-area"],
    [run, "method"],
    [run, "ambient"],
  );
  const type = judge.needWord(cable, "type");
  const insulation = judge.needWord(cable, "insulation");
  const { method, insulation: surrounded } = laidAs(run, judge);
  const [area, ambient, circuits] = judge.need([cable, "conductor-area"], [run, "ambient"], [run, "grouped-circuits"]);
  const { ruleSet } = judge;
  const column = findColumn(ruleSet.ampacity, { type, insulation, method, loadedConductors });
  if (!column)
    throw new NotKnown([], `${ruleSet.title} gives no capacity of a ${type} cable (${insulation}) laid ${method}`);
  const rating = tabulatedCurrent(column, area.value);
  if (!rating)
    throw new NotKnown([], `the table for ${method} does not give ${formatValue(area.value, "area", area.unit)}`);
  const table = ruleSet.grouping.get(method);
  const grouping = table && groupingFactor(table, circuits);
  if (!grouping && circuits.value > 1)
    throw new NotKnown([], `${ruleSet.title} gives no factor for ${circuits.value} circuits laid ${method}`);
  const factors: CapacityFactors = {
    ambient: ambientFactor(ambient, column.ambient),
    grouping,
    insulation: surrounded,
  };
  return { current: currentCapacity(rating, factors), column, factors };
}
