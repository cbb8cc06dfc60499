import type { Assessment } from "../assessment/assessment.js";
import { given } from "../design/facts.js";
import type { Run } from "../design/things.js";
import { shareOfVoltage } from "../physics/ac-drop.js";
import type { Figure } from "../physics/figure.js";
import { standardMaxPowerVoltage } from "../physics/string-voltage.js";
import { relativeDrop } from "../physics/voltage-drop.js";
import { riseSteps } from "../rules/ac-rise.js";
import { moduleOf, modulesInSeries } from "../rules/array-figures.js";
import { unitName, unitsThrough } from "../rules/feeding-units.js";
import { NotKnown } from "../rules/judge.js";
import { dropSteps } from "../rules/path-drop.js";

/** What is lost along one run when the array or the inverter gives all it can. */
export interface RunDrop {
  readonly run: Run;
  /** On the a.c. side voltage rises towards the inverter. */
  readonly word: "drop" | "rise";
  readonly volts: Figure;
  /** Of the string's voltage at maximum power, or of the supply's nominal voltage. */
  readonly share?: Figure;
}

/** One way along which drop adds up: from a string to its tracker, or from a unit that feeds in to the supply. */
export interface DropPath {
  /** The string, or the inverter or generating unit. */
  readonly id: string;
  /** Where it ends. */
  readonly to: string;
  readonly steps: readonly RunDrop[];
}

export interface Drops {
  readonly paths: readonly DropPath[];
  /** Ways of which something is not known, with what. */
  readonly notKnown: readonly { readonly id: string; readonly missing: string }[];
  readonly byRun: ReadonlyMap<Run, RunDrop>;
}

/** The drops that the checks on them are made of, along every way of which all is known. */
export function dropsOf(assessment: Assessment): Drops {
  const paths: DropPath[] = [];
  const notKnown: { id: string; missing: string }[] = [];
  const attempt = (id: string, to: string, steps: () => RunDrop[]): void => {
    try {
      const found = steps();
      if (found.length > 0) paths.push({ id, to, steps: found });
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      notKnown.push({ id, missing: missingText(error) });
    }
  };
  for (const zone of assessment.zones)
    for (const array of zone.arrays)
      for (const { string, steps } of array.strings)
        if (array.tracker)
          attempt(string.id, array.id, () => {
            const [voltage] = assessment.judge.need([moduleOf(string), "voltage-at-max-power"]);
            const whole = standardMaxPowerVoltage({ modules: modulesInSeries(string), voltage });
            return dropSteps(steps, array, assessment.judge).map(({ run, drop }) => ({
              run,
              word: "drop",
              volts: drop,
              share: relativeDrop(drop, whole),
            }));
          });
  for (const { trees } of assessment.plants)
    for (const tree of trees) {
      if (tree.root.item.kind !== "supply") continue;
      const nominal = given(tree.root.item, "voltage");
      for (const unit of unitsThrough(tree, tree.root))
        attempt(unitName(unit).id, tree.root.item.id, () =>
          riseSteps(unit, tree, assessment.judge).map(({ run, rise }) => ({
            run,
            word: "rise",
            volts: rise,
            share: nominal && shareOfVoltage(rise, nominal),
          })),
        );
    }
  const byRun = new Map<Run, RunDrop>();
  for (const path of paths)
    for (const step of path.steps) {
      // Strings of unequal length share a run: the shortest loses the largest share of its voltage.
      const known = byRun.get(step.run);
      if (!known || (step.share?.value ?? 0) > (known.share?.value ?? 0)) byRun.set(step.run, step);
    }
  return { paths, notKnown, byRun };
}

/** What a sum lacks, in words. */
export function missingText({ missing, reason }: NotKnown): string {
  const names = missing.map(({ thing, property }) => `${thing.is === "part" ? thing.name : thing.id} ${property}`);
  return [...names, ...(reason ? [reason] : [])].join(", ");
}
