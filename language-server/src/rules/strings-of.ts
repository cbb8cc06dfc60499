import type { PvArray, StringPath, Zone } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import type { Spot } from "./rule.js";

/** A string with the array that it belongs to: the subject of most rules of this side. */
export interface StringSubject {
  readonly path: StringPath;
  readonly array: PvArray;
  readonly zone: Zone;
}

/** Every string of a zone once, also one that is joined to two trackers. */
export function* stringsOf(zone: Zone): Generator<StringSubject> {
  const seen = new Set<Item>();
  for (const array of zone.arrays) {
    for (const path of array.strings) {
      if (seen.has(path.string)) continue;
      seen.add(path.string);
      yield { path, array, zone };
    }
  }
}

export const stringOf = ({ path }: StringSubject): Item => path.string;

/** A tracker with what is wired to it. */
export interface TrackerSubject {
  readonly tracker: Item;
  readonly array: PvArray;
  readonly zone: Zone;
}

/** Every tracker of a zone, used or not. */
export function* trackersOf(zone: Zone): Generator<TrackerSubject> {
  for (const array of zone.arrays) if (array.tracker) yield { tracker: array.tracker, array, zone };
}

export const trackerOf = ({ tracker }: TrackerSubject): Item => tracker;

/** Trackers of the zone's inverter that nothing is wired to. */
export function freeTrackers(zone: Zone): Item[] {
  return [...trackersOf(zone)]
    .filter(({ array }) => array.strings.length === 0 && array.landing.length === 0)
    .map(trackerOf);
}

/** The word that chooses a tracker: its name in the run that lands on it last. */
export function landingSpot({ tracker, array }: TrackerSubject): Spot {
  const runs = array.landing.filter((run) => array.runs.has(run));
  const run = runs[runs.length - 1];
  if (!run) return { thing: tracker };
  return { thing: run, word: run.to?.item === tracker ? "to" : "from" };
}
