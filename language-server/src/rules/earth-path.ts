import type { Plant } from "../circuit/plant.js";
import { given, wordOf } from "../design/facts.js";
import type { Part, Run } from "../design/things.js";
import { resistanceAtTemperature } from "../physics/conductor.js";
import { tableResistance } from "../physics/conductor-tables.js";
import { formatValue } from "../physics/display.js";
import { armourResistance, earthLoop, runLoop, runLoops } from "../physics/earth-loop.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { withAssumption } from "./cable-conductor.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { cableOf, neededLength, needFacts } from "./run-facts.js";
import { runsAlong, type SupplyWay } from "./supply-way.js";

/** What a fault to earth flows through: line and protective conductors, hot as at full load. */

/** Resistance of one copper conductor of a cable at 20 °C, Ω/m. Throws NotKnown where no table gives it. */
export function coldResistance(cable: Part, area: Given, judge: Judge): Given {
  needFacts(judge, [cable, "conductor-class"], [cable, "conductor-coating"]);
  if (judge.word(cable, "conductor-material") === "aluminium")
    throw new NotKnown([], `the tables give no resistance of aluminium (${cable.name})`);
  const conductorClass = judge.needWord(cable, "conductor-class");
  const coating = judge.needWord(cable, "conductor-coating");
  const found = tableResistance({ conductorClass, coating }, area.value);
  if (found) return withAssumption(found, cable);
  const size = formatValue(area.value, "area", area.unit);
  throw new NotKnown([], `IEC 60228 gives no resistance for ${size} ${conductorClass}, ${coating}`);
}

/** What carries a fault back along a run. */
export interface ProtectiveConductor {
  readonly kind: "core" | "armour";
  readonly area: Given;
}

/**
 * The protective conductor of a run: laid with it, in its cable, the armour, or for tails the main earthing conductor
 * that runs beside them. Throws NotKnown where none is stated.
 */
export function protectiveConductor(run: Run, cable: Part, plant: Plant): ProtectiveConductor {
  const beside = given(run, "protective-conductor-area") ?? given(cable, "protective-conductor-area");
  if (beside) return { kind: "core", area: beside };
  const armour = given(cable, "armour-area");
  if (armour) return { kind: "armour", area: armour };
  if (wordOf(cable, "type") === "tails") {
    const main = plant.earthing && given(plant.earthing, "main-conductor");
    if (main) return { kind: "core", area: main };
    if (plant.earthing) throw new NotKnown([{ thing: plant.earthing, property: "main-conductor" }]);
  }
  throw new NotKnown([{ thing: run, property: "protective-conductor-area" }]);
}

const memory = new WeakMap<Judge, Map<Run, Derived | NotKnown>>();

/** Resistance of line and protective conductor of a run at full load, Ω. Worked out once an assessment. */
export function loopOfRun(run: Run, plant: Plant, judge: Judge): Derived {
  let known = memory.get(judge);
  if (!known) {
    known = new Map();
    memory.set(judge, known);
  }
  let found = known.get(run);
  if (!found) {
    found = workOut(run, plant, judge);
    known.set(run, found);
  }
  if (found instanceof NotKnown) throw found;
  return found;
}

function workOut(run: Run, plant: Plant, judge: Judge): Derived | NotKnown {
  try {
    return loopIn(run, cableOf(run), plant, judge);
  } catch (error) {
    if (error instanceof NotKnown) return error;
    throw error;
  }
}

/** The same if the run were laid in this cable. */
export function loopIn(run: Run, cable: Part, plant: Plant, judge: Judge): Derived {
  const missing = new MissingFacts();
  const length = missing.orElse(() => neededLength(run));
  missing.orElse(() => needFacts(judge, [cable, "conductor-area"], [cable, "conductor-class"], [cable, "insulation"]));
  const protective = missing.orElse(() => protectiveConductor(run, cable, plant));
  missing.stop();
  const [area] = judge.need([cable, "conductor-area"]);
  const line = hotResistance(cable, area, judge);
  return runLoop({ length: length!, line, protective: resistanceOf(protective!, cable, judge) });
}

function hotResistance(cable: Part, area: Given, judge: Judge): Derived {
  const insulation = judge.needWord(cable, "insulation");
  const hot = judge.ruleSet.ac.conductorTemperature.get(insulation);
  if (!hot) throw new NotKnown([], `${judge.ruleSet.title} gives no conductor temperature for ${insulation}`);
  return resistanceAtTemperature(coldResistance(cable, area, judge), hot);
}

function resistanceOf({ kind, area }: ProtectiveConductor, cable: Part, judge: Judge): Figure {
  if (kind === "core") return hotResistance(cable, area, judge);
  const insulation = judge.needWord(cable, "insulation");
  const hot = judge.ruleSet.ac.armourTemperature.get(insulation);
  if (!hot) throw new NotKnown([], `${judge.ruleSet.title} gives no armour temperature for ${insulation}`);
  return armourResistance(area, hot);
}

/** Earth fault loop impedance (Ω) at the end of a way from the supply. Throws NotKnown naming all that is missing. */
export function loopBehind(way: SupplyWay, plant: Plant, judge: Judge): Derived {
  const missing = new MissingFacts();
  const external = missing.orElse(() => judge.need([way.supply, "external-loop-impedance"])[0]);
  const runs = runsAlong(way).map((run) => missing.orElse(() => loopOfRun(run, plant, judge)));
  missing.stop();
  return earthLoop(external!, runs as Derived[]);
}

/** Resistance of line and protective conductors along runs (Ω), without the supply. */
export function loopInside(runs: readonly Run[], plant: Plant, judge: Judge): Derived {
  const missing = new MissingFacts();
  const loops = runs.map((run) => missing.orElse(() => loopOfRun(run, plant, judge)));
  missing.stop();
  return runLoops(loops as Derived[]);
}
