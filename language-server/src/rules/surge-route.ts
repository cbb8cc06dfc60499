import type { PvArray, StringPath, SurgeTap, Zone } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";
import { arithmetic } from "../physics/constants.js";
import type { Derived, Figure } from "../physics/figure.js";
import { as, derive } from "../physics/make.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Missing } from "./rule.js";
import { lengthOf } from "./run-facts.js";

/** Lengths that matter to surges. */

const total = "Σ L";

function sumOfLengths(lengths: readonly Figure[], note?: string): Derived {
  let value = 0;
  for (const length of lengths) value += length.value;
  const terms = lengths.map((length) => as("L", length));
  return derive("L", value, "length", "m", total, terms, arithmetic, note);
}

/**
 * Length of the d.c. routes of an inverter, m: what lightning sees. Runs that are said to share a route count once,
 * with the longest of them; every other run counts as a route of its own. Throws NotKnown where a length is missing.
 */
export function routeLength(zone: Zone, judge: Judge): Derived {
  const longest = new Map<Run | string, Figure>();
  const missing: Missing[] = [];
  for (const array of zone.arrays) {
    for (const run of array.runs.keys()) {
      const length = lengthOf(run);
      if (!length) {
        missing.push({ thing: run, property: "length" });
        continue;
      }
      const route = judge.text(run, "route") ?? run;
      const known = longest.get(route);
      if (!known || known.value < length.value) longest.set(route, length);
    }
  }
  if (missing.length > 0) throw new NotKnown(missing);
  return sumOfLengths([...longest.values()], "runs that name no route count as routes of their own");
}

/** A string's way to the inverter with the places of the surge protective devices along it. */
export interface ProtectedWay {
  readonly string: Item;
  readonly length: Derived;
  /** Devices with their distance from the string, m. */
  readonly taps: readonly { readonly spd: Item; readonly fromString: number }[];
}

/** Throws NotKnown where a length along the way is missing. */
export function protectedWay({ string, steps }: StringPath, array: PvArray): ProtectedWay {
  const reached = new Map<Item, number>([[string, 0]]);
  const lengths: Figure[] = [];
  const missing: Missing[] = [];
  let sum = 0;
  for (const step of steps) {
    if (step.is === "item") {
      if (!reached.has(step)) reached.set(step, sum);
      continue;
    }
    const length = lengthOf(step);
    if (!length) missing.push({ thing: step, property: "length" });
    else {
      lengths.push(length);
      sum += length.value;
    }
  }
  if (missing.length > 0) throw new NotKnown(missing);
  if (array.tracker) reached.set(array.tracker, sum);
  return { string, length: sumOfLengths(lengths), taps: tapsAt(reached, array.surge) };
}

function tapsAt(reached: ReadonlyMap<Item, number>, surge: readonly SurgeTap[]): ProtectedWay["taps"] {
  const taps: { spd: Item; fromString: number }[] = [];
  for (const { spd, at } of surge) {
    const fromString = at && reached.get(at.item);
    if (fromString !== undefined) taps.push({ spd, fromString });
  }
  return taps;
}
