import type { Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { protectiveSize } from "../physics/protective-size.js";
import { judgeSize } from "./earthing-conductors.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import type { Outcome } from "./rule.js";
import { cableOf } from "./run-facts.js";

/** Earth of what stands on the wall: inverters, batteries, surge protective devices. */

const why = "A fault to its case then finds no way back: the case stays live until somebody touches it.";

/** A run that brings a.c. to a grid or backup port. */
function runAt(plant: Plant, port: Item): Run | undefined {
  return plant.lines.find(({ run }) => run.from?.item === port || run.to?.item === port)?.run;
}

/** Protective conductor that is laid with a run. */
function conductorWith(run: Run): Given | undefined {
  const { cable } = run;
  return (
    given(run, "protective-conductor-area") ??
    (cable && (given(cable, "protective-conductor-area") ?? given(cable, "armour-area")))
  );
}

/** By a conductor of its own, or by the one in its a.c. cable. */
export function judgeInverter(plant: Plant, inverter: Item, judge: Judge): Outcome {
  if (judge.word(inverter, "protection-class") === "class-2")
    return judge.notApplicable("class II: it has no case to be earthed");
  const port = inverter.children.find(({ kind }) => kind === "ac");
  const run = port && runAt(plant, port);
  const inCable = run && conductorWith(run);
  if (run && inCable && inCable.value > 0) return judge.holds(`the protective conductor of ${run.id}`);
  return judgeOwn(inverter, run, "the protective conductor of this inverter", judge);
}

/**
 * A fault in a battery's case is fed through its inverter too: the inverter's a.c. conductors size its earth, unless
 * something separates the two sides.
 */
export function judgeBattery(plant: Plant, battery: Item, port: Item | undefined, judge: Judge): Outcome {
  const inverter = port?.parent;
  const grid = inverter?.children.find(({ kind }) => kind === "ac");
  const isSeparated = inverter !== undefined && judge.flag(inverter, "galvanic-separation") === true;
  const run = grid && !isSeparated ? runAt(plant, grid) : undefined;
  return judgeOwn(battery, run, "the protective conductor of this battery", judge);
}

function judgeOwn(thing: Item, run: Run | undefined, name: string, judge: Judge): Outcome {
  const { protectiveSizes } = judge.ruleSet.ac;
  const question = { thing, property: "earth-conductor", name, why, adiabatic: true };
  const [own] = judge.need([thing, "earth-conductor"]);
  if (!run || own.value === 0) return judgeSize(question, protectiveSizes.apartUnprotected, [], judge);
  const cable = cableOf(run);
  const [line] = judge.need([cable, "conductor-area"]);
  const byTable = protectiveSize(line, protectiveSizes);
  const least = byTable.value < protectiveSizes.apartUnprotected.value ? protectiveSizes.apartUnprotected : byTable;
  return judgeSize(question, least, [stated(cable, "conductor-area", line)], judge);
}

/** Whether a surge protective device has one at all; `surge-lead` says how large it has to be. */
export function judgeSurgeDevice(spd: Item, judge: Judge): Outcome {
  const [own] = judge.need([spd, "earth-conductor"]);
  if (own.value > 0) return judge.holds("it has an earth conductor");
  return judge.finding({
    what: `${spd.id} has no earth conductor.`,
    why: "A surge has nowhere to go: the device does nothing.",
    todo: "Lay one to the main earthing terminal, as short and straight as can be.",
    spot: { thing: spd, property: "earth-conductor" },
    value: own,
  });
}
