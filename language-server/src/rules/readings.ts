import type { PvArray } from "../circuit/array.js";
import type { Installation } from "../circuit/installation.js";
import type { Plant } from "../circuit/plant.js";
import { readingsOf } from "../design/readings.js";
import type { Item, Reading, Run } from "../design/things.js";
import { hasMains } from "./mains.js";

/** A reading with what was measured on in the circuit. */
export interface ReadingSubject {
  readonly reading: Reading;
  readonly target: Item | Run;
  /** On the array side: the array, and the strings that feed the target. */
  readonly array?: PvArray;
  readonly strings: readonly Item[];
  /** On the a.c. side. */
  readonly plant?: Plant;
}

const memory = new WeakMap<Installation, readonly ReadingSubject[]>();

/** Every reading of an installation, in the order of the text. */
export function readingSubjects(installation: Installation): readonly ReadingSubject[] {
  let subjects = memory.get(installation);
  if (!subjects) {
    subjects = findSubjects(installation);
    memory.set(installation, subjects);
  }
  return subjects;
}

function findSubjects(installation: Installation): ReadingSubject[] {
  const readings = readingsOf(installation.design);
  if (readings.length === 0) return [];
  const onArrays = arrayPlaces(installation);
  const inPlants = plantPlaces(installation);
  return readings.map((reading): ReadingSubject => {
    const { target } = reading;
    const place = onArrays.get(target);
    const strings = place?.strings ?? (target.is === "item" && target.kind === "string" ? [target] : []);
    return { reading, target, array: place?.array, strings, plant: inPlants.get(target) };
  });
}

type ArrayPlaces = ReadonlyMap<Item | Run, { readonly array: PvArray; readonly strings: readonly Item[] }>;

function arrayPlaces({ zones }: Installation): ArrayPlaces {
  const found = new Map<Item | Run, { array: PvArray; strings: readonly Item[] }>();
  for (const { arrays } of zones) {
    for (const array of arrays) {
      const all = array.strings.map(({ string }) => string);
      for (const string of all) found.set(string, { array, strings: [string] });
      for (const [device, strings] of array.devices) found.set(device, { array, strings });
      for (const [run, strings] of array.runs) found.set(run, { array, strings });
      if (array.tracker) found.set(array.tracker, { array, strings: all });
    }
  }
  return found;
}

function plantPlaces({ plants }: Installation): ReadonlyMap<Item | Run, Plant> {
  const found = new Map<Item | Run, Plant>();
  const add = (thing: Item | Run, plant: Plant): void => {
    if (!found.has(thing)) found.set(thing, plant);
  };
  for (const plant of plants) {
    for (const { order, arriving } of plant.trees) {
      for (const terminal of order) {
        add(terminal.item, plant);
        const by = arriving.get(terminal)?.by;
        if (by) add(by, plant);
      }
    }
    for (const { battery } of plant.batteries) add(battery, plant);
    if (!hasMains(plant)) continue;
    for (const electrode of plant.electrodes) add(electrode, plant);
    if (plant.earthing) add(plant.earthing, plant);
  }
  return found;
}

/**
 * The readings of a property that count: of several on one thing, in one mode, the latest; what was repaired since is
 * not found again. An undated reading counts as older than a dated one, of two on a day the later line wins.
 */
export function* latestReadings(installation: Installation, property: string): Generator<ReadingSubject> {
  const latest = new Map<string, ReadingSubject>();
  for (const subject of readingSubjects(installation)) {
    const { declaration, target } = subject.reading;
    if (!declaration.properties.some(({ name }) => name === property)) continue;
    const mode = declaration.properties.find(({ name }) => name === "mode")?.value;
    const key = `${target.id} ${mode?.kind === "word" ? mode.value : ""}`;
    const known = latest.get(key)?.reading.declaration;
    if (!known || (declaration.day ?? "") >= (known.day ?? "")) latest.set(key, subject);
  }
  yield* latest.values();
}
