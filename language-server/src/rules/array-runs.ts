import type { PvArray, Step, Zone } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";

/** A run of the array side with the array whose voltage it carries. */
export interface RunSubject {
  readonly run: Run;
  readonly array: PvArray;
}
/** A run that carries array current. */
export interface LoadedRunSubject extends RunSubject {
  /** The strings whose current it carries. */
  readonly strings: readonly Item[];
  /** What follows on the way to the inverter. */
  readonly after: readonly Step[];
}

/** Runs that carry array current, each once. */
export function* loadedRuns(zone: Zone): Generator<LoadedRunSubject> {
  const seen = new Set<Run>();
  for (const array of zone.arrays) {
    for (const { steps } of array.strings) {
      for (const [index, step] of steps.entries()) {
        if (step.is !== "run" || seen.has(step)) continue;
        seen.add(step);
        yield { run: step, array, strings: array.runs.get(step) ?? [], after: steps.slice(index + 1) };
      }
    }
  }
}

/** All runs that stand at an array's voltage, each once: those that carry its current, and what is tapped off them. */
export function* liveRuns(zone: Zone): Generator<RunSubject> {
  const seen = new Set<Run>();
  for (const array of zone.arrays) {
    for (const { links } of array.terminals) {
      for (const { by } of links) {
        if (by.is !== "run" || seen.has(by)) continue;
        seen.add(by);
        yield { run: by, array };
      }
    }
  }
}

export const runOf = ({ run }: RunSubject): Run => run;
