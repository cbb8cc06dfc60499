import type { PvArray, StringPath } from "../circuit/array.js";
import { given, wordOf } from "../design/facts.js";
import type { Item, Run, Thing } from "../design/things.js";
import type { Figure, Given } from "../physics/figure.js";
import { largestCount } from "../physics/string-length.js";
import { coldVoltage, moduleOf, modulesInSeries } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import { ratedAs } from "./pole-arrangement.js";
import type { Missing } from "./rule.js";

/** Whose limit it is; decides why exceeding it matters. */
export type HolderSort = "inverter" | "module" | "isolator" | "fuse" | "spd" | "combiner" | "cable" | "connector";

/** A voltage that something on a string's way to the inverter stands. */
export interface VoltageLimit {
  readonly sort: HolderSort;
  /** What a reader knows it by: the device, the run, the module. */
  readonly holder: Thing;
  /** Where the limit is stated, and as which property. */
  readonly at: Thing;
  readonly property: string;
  readonly figure: Given;
}

export interface VoltageLimits {
  readonly limits: readonly VoltageLimit[];
  readonly missing: readonly Missing[];
  /** What no property can say. */
  readonly reasons: readonly string[];
}

/** Every voltage limit that the open-circuit voltage of a string is held against, and those that are not known. */
export function voltageLimits(path: StringPath, array: PvArray, judge: Judge): VoltageLimits {
  const limits: VoltageLimit[] = [];
  const missing: Missing[] = [];
  const reasons: string[] = [];
  const add = (sort: HolderSort, holder: Thing, property: string, at = holder): void => {
    const figure = given(at, property);
    if (figure) limits.push({ sort, holder, at, property, figure });
    else missing.push({ thing: at, property });
  };
  const addIsolator = (isolator: Item): void => {
    // A rating for alternating current says nothing about breaking a direct one.
    if (wordOf(isolator, "supply") === "ac") {
      reasons.push(`${isolator.id} has no d.c. rating`);
      return;
    }
    try {
      add("isolator", isolator, "rated-voltage", ratedAs(isolator));
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      missing.push(...error.missing);
      if (error.reason) reasons.push(error.reason);
    }
  };
  const addRun = (run: Run): void => {
    if (run.cable) add("cable", run, "rated-dc-voltage", run.cable);
    else reasons.push(`${run.id} names no cable`);
    if (judge.knows(run, "start-connector") || judge.knows(run, "end-connector"))
      add("connector", run, "connector-rated-voltage");
  };

  add("module", moduleOf(path.string), "max-system-voltage");
  for (const step of path.steps) {
    if (step.is === "run") addRun(step);
    else if (step.kind === "isolator") addIsolator(step);
    else if (step.kind === "fuse" || step.kind === "combiner") add(step.kind, step, "rated-voltage");
  }
  for (const { spd } of array.surge) add("spd", spd, "max-continuous-voltage");
  if (array.inverter) add("inverter", array.inverter, "max-dc-voltage");
  else reasons.push(`${path.string.id} is wired to no inverter`);
  return { limits, missing, reasons };
}

/** Uoc,max of one module, V. */
export function coldModuleVoltage(string: Item, judge: Judge): Figure {
  return coldVoltage(modulesInSeries(string, 1), moduleOf(string), judge);
}

/** The most modules that stay within all limits that are known; undefined where none is. */
export function mostModules(path: StringPath, array: PvArray, judge: Judge): number | undefined {
  const { limits } = voltageLimits(path, array, judge);
  if (limits.length === 0) return undefined;
  const perModule = coldModuleVoltage(path.string, judge);
  return Math.min(...limits.map(({ figure }) => largestCount(figure, perModule).value));
}
