import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { largestFuseLoop, largestLoop, operatingCurrent } from "../physics/disconnection.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { fuseOperatingCurrent } from "../physics/fuse-operating.js";
import { type Judge, NotKnown } from "./judge.js";
import { needFacts } from "./run-facts.js";

/** At what a breaker, RCBO or fuse operates on an earth fault. */

/**
 * Current (A) that operates a breaker, RCBO or fuse within a time; for a fuse the voltage to earth (V) is needed, which its
 * table holds for. Throws NotKnown for a curve or device without a figure.
 */
export function operatingCurrentOf(device: Item, time: Figure, judge: Judge, voltage?: Figure): Derived {
  if (device.kind === "fuse" && voltage) return fuseOperatingCurrent(voltage, fuseLoopOf(device, voltage, time, judge));
  needFacts(judge, [device, "rated-current"], [device, "curve"]);
  const [rating] = judge.need([device, "rated-current"]);
  const curve = judge.needWord(device, "curve");
  const found = operatingCurrent(judge.ruleSet.ac.operatingMultiples, { curve, rating }, time.value);
  if (found) return found;
  throw new NotKnown([], `${judge.ruleSet.title} gives no operating current of a type ${curve} breaker`);
}

/**
 * Largest earth fault loop impedance (Ω) at which a device operates within a time: as its sheet says, as computed from
 * its operating current, or as the tables of fuses give it.
 */
export function largestLoopOf(device: Item, voltage: Figure, time: Figure, judge: Judge): Figure {
  const own = given(device, "max-loop-impedance");
  if (own) return own;
  if (device.kind !== "fuse")
    return largestLoop(voltage, judge.limit("minimum-voltage-factor"), operatingCurrentOf(device, time, judge));
  return fuseLoopOf(device, voltage, time, judge);
}

function fuseLoopOf(device: Item, voltage: Figure, time: Figure, judge: Judge): Given {
  needFacts(judge, [device, "rated-current"], [device, "category"]);
  const [rating] = judge.need([device, "rated-current"]);
  const category = judge.needWord(device, "category");
  const found = largestFuseLoop(
    judge.ruleSet.ac.fuseLoops,
    { category, rating: rating.value, voltage: voltage.value },
    time.value,
  );
  if (found) return found;
  throw new NotKnown([], `the tables give no loop impedance for a ${category} fuse of that rating and voltage`);
}
