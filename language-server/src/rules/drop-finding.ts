import type { PvArray } from "../circuit/array.js";
import { wordOf } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { stated as figure } from "../physics/make.js";
import { longestRun, runLoss, smallestSizeForDrop, totalLoss } from "../physics/voltage-drop.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { type DropStep, dropStep } from "./path-drop.js";
import { idsOf } from "./phrases.js";
import type { Finding, Fix } from "./rule.js";

/** What is lost between a string and its tracker. */
export interface WayDrop {
  readonly string: Item;
  readonly array: PvArray;
  readonly steps: readonly DropStep[];
  /** Ump of the string, V. */
  readonly voltage: Derived;
  /** V. */
  readonly drop: Derived;
  /** The drop as a share of Ump. */
  readonly share: Derived;
}

/** The finding for a run in which strings lose too much: told for the one that loses most. */
export function tooMuchDrop(run: Run, ways: readonly WayDrop[], design: Given, judge: Judge): Finding {
  const worst = ways.reduce((most, way) => (way.share.value > most.share.value ? way : most));
  const { string, array, steps, voltage, drop, share } = worst;
  const ceiling = judge.limit("dc-voltage-drop-ceiling");
  const isAboveCeiling = share.value > ceiling.value;
  const limit = isAboveCeiling ? ceiling : design;
  const [lost, allowed] = formatApart(share, limit);
  const step = steps.find((each) => each.run === run) ?? steps[0]!;
  const loss = totalLoss(steps.map((each) => runLoss(each.loaded)));
  return judge.finding({
    what: `From ${string.id} to ${array.tracker?.id} ${lost} is lost (${formatFigure(drop)} of ${formatFigure(voltage)}, ${formatFigure(loss)}${sharedWith(worst)}); ${isAboveCeiling ? "the ceiling" : "the design limit"} is ${allowed}.`,
    why: "It warms the cable instead of reaching the inverter, whenever the sun shines.",
    todo: advice(step, allowedIn(step, worst, design), judge),
    spot: { thing: run, word: "cable" },
    value: share,
    limit,
    related: [
      ...judge.limitSet(isAboveCeiling ? "dc-voltage-drop-ceiling" : "dc-voltage-drop-design", "the site's own limit"),
      ...steps
        .filter((each) => each !== step)
        .map((each) => ({
          spot: { thing: each.run, word: "length" as const },
          message: `${each.run.id} loses ${formatFigure(each.drop)} of it`,
        })),
      ...ways
        .filter((way) => way !== worst)
        .map((way) => ({
          spot: { thing: way.string, word: "name" as const },
          message: `${way.string.id} loses ${formatFigure(way.share)}`,
        })),
    ],
    fixes: (asked) => largerCables(step, ways, design, asked),
  });
}

/** Strings that lose through the same runs, so that the watts are theirs too. */
function sharedWith({ string, array, steps }: WayDrop): string {
  const others = new Set(steps.flatMap(({ run }) => array.runs.get(run) ?? []));
  others.delete(string);
  return others.size > 0 ? `, shared with ${idsOf([...others])}` : "";
}

/** What one run may lose if the others of the way stay as they are, V. */
function allowedIn(step: DropStep, { drop, voltage }: WayDrop, design: Given): Figure {
  const allowed = design.value * voltage.value - (drop.value - step.drop.value);
  return figure("ΔUmax", allowed, "voltage", "V", "what the limit leaves for this run");
}

function advice({ run, kind, loaded }: DropStep, allowed: Figure, judge: Judge): string {
  if (allowed.value <= 0) return "Shorten the way, or lay larger cable along all of it.";
  const conductorTemperature = judge.limit("hot-conductor-temperature");
  const size = smallestSizeForDrop({ ...loaded, kind, conductorTemperature, allowed });
  const larger = size === undefined ? "" : `lay ${run.id} in ${formatValue(size, "area", "mm2")}, or `;
  const longest = formatFigure(longestRun(loaded, allowed));
  return `Within ${formatFigure(judge.limit("dc-voltage-drop-design"))}: ${larger}shorten it to ${longest}.`;
}

/** Cables in which every string of the run keeps the design limit. */
function largerCables(step: DropStep, ways: readonly WayDrop[], design: Given, judge: Judge): readonly Fix[] {
  const type = wordOf(step.cable, "type");
  return partFixes(judge, {
    thing: step.run,
    properties: [],
    preview: (part) => {
      if (wordOf(part, "type") !== type) return undefined;
      const share = shareIn(part, step, ways, judge);
      return share !== undefined && share <= design.value ? `${percent(share)} lost` : undefined;
    },
    order: (part) => judge.quantity(part, "conductor-area")?.value ?? 0,
  });
}

/** The largest share that is lost if the run is laid in another cable; undefined for one that the tables do not know. */
function shareIn(part: Part, { run, drop }: DropStep, ways: readonly WayDrop[], judge: Judge): number | undefined {
  try {
    return Math.max(
      ...ways.map((way) => {
        const own = dropStep(run, part, way.array, judge).drop.value;
        return (way.drop.value - drop.value + own) / way.voltage.value;
      }),
    );
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}
