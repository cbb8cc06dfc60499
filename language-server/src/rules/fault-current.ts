import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import type { Run } from "../design/things.js";
import type { Derived, Figure } from "../physics/figure.js";
import { faultCurrentBehind, faultCurrentWithGenerators } from "../physics/prospective-fault.js";
import { ifKnown } from "./ac-cables.js";
import { coldResistance } from "./earth-path.js";
import { linesOf, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import type { PassedDevice } from "./passed-devices.js";
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

function otherUnits(plant: Plant, { tree, after }: PassedDevice, judge: Judge): Figure[] {
  const behind = new Set<Terminal>(unitsThrough(tree, after));
  const all = new Set(plant.trees.flatMap((each) => unitsThrough(each, each.root)));
  const others = [...all].filter((unit) => !behind.has(unit));
  return judge.need(...others.map(({ item }) => [item, "max-current"] as const));
}
