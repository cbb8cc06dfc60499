import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import type { Run } from "../design/things.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { faultCurrentBehind, faultCurrentWithGenerators } from "../physics/prospective-fault.js";
import { ifKnown } from "./ac-cables.js";
import { coldResistance } from "./earth-path.js";
import { linesOf, unitsThrough } from "./feeding-units.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import type { PassedDevice } from "./passed-devices.js";
import type { Missing } from "./rule.js";
import { cableOf, neededLength } from "./run-facts.js";
import { runsAlong, type SupplyWay } from "./supply-way.js";

/**
 * The largest current (A) that may flow through a device into a fault right behind it: what the supply drives there, and
 * what every unit feeds in that does not lie behind it.
 */
export function faultCurrentAt(plant: Plant, passed: PassedDevice, way: SupplyWay, judge: Judge): Derived {
  const missing = new MissingFacts();
  const facts = missing.orElse(() => judge.need([way.supply, "voltage"], [way.supply, "prospective-fault-current"]));
  const lines = missing.orElse(() => linesOf(way.supply, judge));
  const units = missing.orElse(() => otherUnits(plant, passed, judge));
  missing.stop();
  const [voltage, atOrigin] = facts!;
  const runs = runsAlong(way).flatMap((run) => ifKnown(() => [coldRun(run, judge)]) ?? []);
  const fromSupply = faultCurrentBehind({ voltage, atOrigin, runs, lines: lines! });
  return faultCurrentWithGenerators(fromSupply, units!);
}

function coldRun(run: Run, judge: Judge) {
  const cable = cableOf(run);
  const [area] = judge.need([cable, "conductor-area"]);
  return { length: neededLength(run), perMetre: coldResistance(cable, area, judge) };
}

/** What each unit that does not lie behind a device feeds into a fault there. */
function otherUnits(plant: Plant, { tree, after }: PassedDevice, judge: Judge): Figure[] {
  const behind = unitsThrough(tree, after);
  const figures: Figure[] = [];
  const missing: Missing[] = [];
  for (const [unit, current] of currentsOf(plant, judge)) {
    if (behind.includes(unit)) continue;
    if (current) figures.push(current);
    else missing.push({ thing: unit.item, property: "max-current" });
  }
  if (missing.length > 0) throw new NotKnown(missing);
  return figures;
}

const memory = new WeakMap<Judge, Map<Plant, ReadonlyMap<Terminal, Given | undefined>>>();

/** The current of every unit of a plant, read once an assessment: each of a thousand devices asks for all of them. */
function currentsOf(plant: Plant, judge: Judge): ReadonlyMap<Terminal, Given | undefined> {
  let known = memory.get(judge);
  if (!known) {
    known = new Map();
    memory.set(judge, known);
  }
  let found = known.get(plant);
  if (!found) {
    const units = plant.trees.flatMap((tree) => unitsThrough(tree, tree.root));
    found = new Map(units.map((unit) => [unit, judge.quantity(unit.item, "max-current")]));
    known.set(plant, found);
  }
  return found;
}
