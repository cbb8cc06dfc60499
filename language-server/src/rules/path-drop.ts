import type { PvArray, Step } from "../circuit/array.js";
import { given } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import type { ConductorKind } from "../physics/conductor-tables.js";
import type { Derived, Figure } from "../physics/figure.js";
import { parallelCurrent } from "../physics/short-circuit.js";
import { type LoadedRun, runDrop } from "../physics/voltage-drop.js";
import { moduleOf } from "./array-figures.js";
import { conductorOf } from "./cable-conductor.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Missing } from "./rule.js";
import { cableOf, lengthOf, neededLength } from "./run-facts.js";

/** One run of a string's way to the inverter, as the drop along it is worked out. */
export interface DropStep {
  readonly run: Run;
  readonly cable: Part;
  readonly kind: ConductorKind;
  readonly loaded: LoadedRun;
  /** Lost there and back, V. */
  readonly drop: Derived;
}

function runsOf(steps: readonly Step[]): Run[] {
  return steps.filter((step): step is Run => step.is === "run");
}

/** What each run of a way loses. Throws NotKnown naming everything that is missing along the whole way. */
export function dropSteps(steps: readonly Step[], array: PvArray, judge: Judge): DropStep[] {
  const runs = runsOf(steps);
  const missing: Missing[] = [];
  for (const run of runs) addMissing(run, judge, missing);
  if (missing.length > 0) throw new NotKnown(missing);
  return runs.map((run) => dropStep(run, cableOf(run), array, judge));
}

function addMissing(run: Run, judge: Judge, missing: Missing[]): void {
  if (!lengthOf(run)) missing.push({ thing: run, property: "length" });
  const { cable } = run;
  if (!cable) {
    missing.push({ thing: run, property: "cable" });
    return;
  }
  for (const property of ["conductor-area", "conductor-class"])
    if (!judge.knows(cable, property) && !missing.some((known) => known.thing === cable && known.property === property))
      missing.push({ thing: cable, property });
}

/** What a run loses if it is laid in this cable. Throws NotKnown for a conductor that the tables do not give. */
export function dropStep(run: Run, cable: Part, array: PvArray, judge: Judge): DropStep {
  const length = neededLength(run);
  const { kind, perMetre } = conductorOf(cable, judge);
  const loaded = { length, perMetre, current: workingCurrent(array.runs.get(run) ?? [], judge) };
  return { run, cable, kind, loaded, drop: runDrop(loaded) };
}

/** Current at maximum power of the strings that a run serves, A. */
function workingCurrent(strings: readonly Item[], judge: Judge): Figure {
  const currents = strings.map((string) => judge.need([moduleOf(string), "current-at-max-power"])[0]);
  return currents.length === 1 && currents[0] ? currents[0] : parallelCurrent(currents, "Imp");
}

/** The run of a way that loses most: the longest for its size and current. It is the one that a drop is told of. */
export function heaviestRun(steps: readonly Step[], array: PvArray): Run | undefined {
  let heaviest: Run | undefined;
  let most = -1;
  for (const run of runsOf(steps)) {
    const length = lengthOf(run)?.value ?? 0;
    const area = (run.cable && given(run.cable, "conductor-area")?.value) ?? 0;
    const weight = area > 0 ? (length * (array.runs.get(run)?.length ?? 1)) / area : 0;
    if (weight > most) {
      heaviest = run;
      most = weight;
    }
  }
  return heaviest;
}
