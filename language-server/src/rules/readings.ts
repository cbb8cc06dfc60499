import type { Installation } from "../circuit/installation.js";
import type { Plant } from "../circuit/plant.js";
import { readingsOf } from "../design/readings.js";
import type { Item, Reading, Run } from "../design/things.js";
import { type Judge, NotKnown } from "./judge.js";
import { hasMains } from "./mains.js";
import type { Outcome } from "./rule.js";

/** A reading with what was measured on in the circuit. */
export interface ReadingSubject {
  readonly reading: Reading;
  readonly target: Item | Run;
  /** On the array side: the strings that feed the target. */
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
  // Most readings are of strings, and need no look at the wiring.
  let onArrays: ArrayPlaces | undefined;
  let inPlants: PlantPlaces | undefined;
  return readingsOf(installation.design).map((reading): ReadingSubject => {
    const { target } = reading;
    if (target.is === "item" && target.kind === "string") return { reading, target, strings: [target] };
    onArrays ??= arrayPlaces(installation);
    const strings = onArrays.get(target);
    if (strings) return { reading, target, strings };
    inPlants ??= plantPlaces(installation);
    return { reading, target, strings: [], plant: inPlants.get(target) };
  });
}

type ArrayPlaces = ReadonlyMap<Item | Run, readonly Item[]>;
type PlantPlaces = ReadonlyMap<Item | Run, Plant>;

function arrayPlaces({ zones }: Installation): ArrayPlaces {
  const found = new Map<Item | Run, readonly Item[]>();
  for (const { arrays } of zones) {
    for (const { strings, devices, runs, tracker } of arrays) {
      for (const [device, own] of devices) found.set(device, own);
      for (const [run, own] of runs) found.set(run, own);
      if (tracker)
        found.set(
          tracker,
          strings.map(({ string }) => string),
        );
    }
  }
  return found;
}

function plantPlaces({ plants }: Installation): PlantPlaces {
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

interface Judged {
  readonly signature: readonly unknown[];
  readonly result: Outcome | readonly Outcome[] | NotKnown;
}
const judgedBefore = new WeakMap<object, WeakMap<Reading, Judged>>();

/**
 * Judges a reading by its strings, or by its supply, once for as long as all of them stay the same: the whole
 * installation is judged at every edit, and a curve of a module is dear. The key stands for what is asked.
 */
export function judgeOnce(
  key: object,
  { reading, strings, plant }: ReadingSubject,
  judge: Judge,
  work: () => Outcome | readonly Outcome[],
): Outcome | readonly Outcome[] {
  const signature = [judge.ruleSet, judge.site, ...strings, ...(plant?.supplies ?? [])];
  let before = judgedBefore.get(key);
  if (!before) {
    before = new WeakMap();
    judgedBefore.set(key, before);
  }
  let judged = before.get(reading);
  if (!judged || !sameElements(judged.signature, signature)) {
    judged = { signature, result: resultOf(work) };
    before.set(reading, judged);
  }
  if (judged.result instanceof NotKnown) throw judged.result;
  return judged.result;
}

function resultOf(work: () => Outcome | readonly Outcome[]): Judged["result"] {
  try {
    return work();
  } catch (error) {
    if (error instanceof NotKnown) return error;
    throw error;
  }
}

function sameElements(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((element, index) => element === other[index]);
}
