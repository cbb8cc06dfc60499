import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, pathTo } from "../circuit/feed.js";
import { type AcRun, shareOfVoltage, smallestSizeForAcDrop } from "../physics/ac-drop.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { stated as figure } from "../physics/make.js";
import { pathDrop } from "../physics/voltage-drop.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { ifKnown, largerCables } from "./ac-cables.js";
import { dropAlong, dropOfSize, dropToNeutral, type LoadedAcRun } from "./ac-run-drop.js";
import { linesOf, unitName, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { percent } from "./part-fixes.js";
import { exportCurrent } from "./port-currents.js";
import type { Fix, Outcome } from "./rule.js";
import { cableOf, neededLength } from "./run-facts.js";

/** What each run between the supply and a unit adds to the voltage. */
export interface RiseStep extends LoadedAcRun {
  /** To neutral, V. */
  readonly rise: Derived;
}

/** The runs from the supply to a unit with all units feeding in. Throws NotKnown naming all that is missing. */
export function riseSteps(unit: Terminal, tree: FeedTree, judge: Judge): RiseStep[] {
  const missing = new MissingFacts();
  const steps: RiseStep[] = [];
  for (const { by, to } of pathTo(tree, unit)?.hops ?? []) {
    if (by.is !== "run") continue;
    const step = missing.orElse(() => riseStep(by, unitsThrough(tree, to), tree, judge));
    if (step) steps.push(step);
  }
  missing.stop();
  return steps;
}

function riseStep(
  run: LoadedAcRun["run"],
  units: readonly Terminal[],
  tree: FeedTree,
  judge: Judge,
): RiseStep | undefined {
  const current = exportCurrent(units, tree, judge);
  if (!current) return undefined;
  const loaded = { run, current, loadedConductors: isBalanced(units, tree, judge) ? 3 : 2 } as const;
  return { ...loaded, rise: dropAlong(loaded, judge) };
}

/** Whether only three-phase units feed in, so that the neutral stays idle. */
export function isBalanced(units: readonly Terminal[], tree: FeedTree, judge: Judge): boolean {
  return linesOf(tree.root.item, judge) === 3 && units.every(({ item }) => linesOf(item, judge) === 3);
}

/** The rise along the cables as a share of the nominal voltage, against the limit of the rule set or the site. */
export function cableRise(unit: Terminal, tree: FeedTree, judge: Judge): Outcome {
  const missing = new MissingFacts();
  const nominal = missing.orElse(() => judge.need([tree.root.item, "voltage"])[0]);
  const steps = missing.orElse(() => riseSteps(unit, tree, judge));
  missing.stop();
  const limit = judge.limit("ac-voltage-rise");
  const rise = pathDrop(steps!.map((step) => step.rise));
  const share = shareOfVoltage(rise, nominal!);
  if (share.value <= limit.value) return judge.pass(share, limit, "rise along the cables");
  return tooMuchRise({ unit, tree, steps: steps!, rise, share, nominal: nominal!, limit }, judge);
}

interface Rise {
  readonly unit: Terminal;
  readonly tree: FeedTree;
  readonly steps: readonly RiseStep[];
  readonly rise: Derived;
  readonly share: Derived;
  readonly nominal: Given;
  readonly limit: Given;
}

function tooMuchRise(found: Rise, judge: Judge): Outcome {
  const { unit, tree, steps, rise, share, limit } = found;
  const most = steps.reduce((largest, step) => (step.rise.value > largest.rise.value ? step : largest));
  const [rises, allowed] = formatApart(share, limit);
  const name = unitName(unit).id;
  const flows = formatFigure(steps[steps.length - 1]!.current);
  return judge.finding({
    what: `Between ${tree.root.item.id} and ${name} the voltage rises by ${rises} (${formatFigure(rise)}) at ${flows}; the limit is ${allowed}.`,
    why: "The inverter disconnects the sooner on bright days, and what the cable takes is lost.",
    todo: advice(found, most, judge),
    spot: { thing: most.run, word: "cable" },
    value: share,
    limit,
    related: [
      ...judge.limitSet("ac-voltage-rise", "the site's own limit"),
      ...steps
        .filter((step) => step !== most)
        .map(({ run, rise: part }) => ({
          spot: { thing: run, word: "length" as const },
          message: `${run.id} adds ${formatFigure(part)} of it`,
        })),
    ],
    fixes: (asked) => thickerCables(found, most, asked),
  });
}

/** What one run may add if the others stay as they are, V to neutral. */
function leftFor(step: RiseStep, { rise, nominal, limit }: Rise): number {
  return limit.value * nominal.value - (rise.value - step.rise.value);
}

function advice(found: Rise, step: RiseStep, judge: Judge): string {
  const { run, current, loadedConductors } = step;
  const left = leftFor(step, found);
  if (left <= 0) return "Shorten the way, or lay larger cable along all of it.";
  const cable = cableOf(run);
  const allowed: Figure = figure(
    "ΔUmax",
    loadedConductors === 3 ? Math.sqrt(3) * left : left,
    "voltage",
    "V",
    "what the limit leaves for this run",
  );
  const question: Omit<AcRun, "perMetre"> = { length: neededLength(run), current };
  const [area] = judge.need([cable, "conductor-area"]);
  const size = smallestSizeForAcDrop({
    ...question,
    allowed,
    perMetreOf: (value) => ifKnown(() => dropOfSize(step, cable, { ...area, value }, judge)),
  });
  const longest = formatValue((left / step.rise.value) * neededLength(run).value, "length", "m", 3);
  const larger = size === undefined ? "" : `lay ${run.id} in ${formatValue(size, "area", "mm2")}, or `;
  return `Within ${formatFigure(found.limit)}: ${larger}shorten it to ${longest}.`;
}

function thickerCables(found: Rise, step: RiseStep, judge: Judge): readonly Fix[] {
  const left = leftFor(step, found);
  return largerCables(step.run, judge, (part) => {
    const rise = ifKnown(() => dropToNeutral(step, part, judge).value);
    if (rise === undefined || rise > left) return undefined;
    return `rise of ${percent((found.rise.value - step.rise.value + rise) / found.nominal.value)}`;
  });
}
