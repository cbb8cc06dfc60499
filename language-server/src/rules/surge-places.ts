import type { PvArray, StringPath } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";
import type { Candidate } from "./added-device.js";
import type { Fix } from "./rule.js";

/** Where a surge protective device can be tapped off: a terminal, and a run that lands on it. */
export interface Place {
  readonly run: Run;
  readonly terminal: string;
  /** What makes it dead for changing it. */
  readonly behind?: Item;
}

/** Near the inverter, behind the last isolator where there is one: there the device can be changed dead. */
export function placeAtInverter({ steps }: StringPath, { tracker }: PvArray): Place | undefined {
  const index = steps.findLastIndex((step) => step.is === "item" && step.row?.through === "opens");
  const device = steps[index];
  const run = steps.slice(index + 1).find((step): step is Run => step.is === "run");
  const end = device?.is === "item" && run && [run.from, run.to].find((each) => each?.item === device);
  if (run && end) return { run, terminal: `${end.item.id}.${end.terminal}`, behind: end.item };
  const last = steps.findLast((step): step is Run => step.is === "run");
  return last && tracker ? { run: last, terminal: tracker.id } : undefined;
}

/** Where the cable leaves the string. */
export function placeAtString({ steps, string }: StringPath): Place | undefined {
  const run = steps.find((step): step is Run => step.is === "run");
  return run && { run, terminal: `${string.id}.out` };
}

/** Taps each of the candidates off at a place. Its lead has no length yet, so that its own rules ask for that. */
export function tapFixes(place: Place | undefined, some: readonly Candidate[]): Fix[] {
  if (!place) return [];
  const { run, terminal, behind } = place;
  const remains = behind ? "" : ", where no isolator makes it dead";
  return some.slice(0, 3).map(({ part, preview }) => ({
    title: `Tap an spd, ${part.name}, off at ${terminal}${remains}`,
    preview,
    does: "add-tee",
    thing: run,
    terminal,
    part,
  }));
}
