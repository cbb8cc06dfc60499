import type { PvArray, Zone } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { idsOf } from "./phrases.js";
import type { Fix } from "./rule.js";
import { freeTrackers, type TrackerSubject } from "./strings-of.js";

/**
 * Fixes that move a run from its tracker to one that nothing is wired to. `preview` says what holds there, or gives
 * undefined where it would not. Only runs that land on the tracker itself can be moved by changing one word.
 */
export function freeTrackerFixes(
  runs: readonly Run[],
  array: PvArray,
  zone: Zone,
  preview: (tracker: Item) => string | undefined,
): Fix[] {
  const run = runs.find((candidate) => array.runs.has(candidate));
  const end = run && endAt(run, array.tracker);
  if (!run || !end) return [];
  for (const tracker of freeTrackers(zone)) {
    const after = preview(tracker);
    if (after === undefined) continue;
    return [
      {
        title: `Wire ${run.id} to ${tracker.id}`,
        preview: `${tracker.id}: ${after}`,
        does: "set-end",
        thing: run,
        end,
        terminal: tracker.id,
      },
    ];
  }
  return [];
}

/**
 * Where several runs land on a tracker: moves the last of them to a free one, if what it carries holds there by one of
 * the tracker's properties.
 */
export function separateFixes(
  { array, zone }: TrackerSubject,
  judge: Judge,
  property: string,
  currentOf: (strings: readonly Item[]) => Figure,
): Fix[] {
  const runs = array.landing.filter((run) => array.runs.has(run));
  const moved = runs[runs.length - 1];
  if (!moved || runs.length < 2) return [];
  const strings = array.runs.get(moved) ?? [];
  const current = currentOf(strings);
  return freeTrackerFixes([moved], array, zone, (tracker) => {
    const limit = judge.quantity(tracker, property);
    if (!limit || current.value > limit.value) return undefined;
    return `${idsOf(strings)} alone, ${formatFigure(current)}, ${percent(current.value / limit.value)}`;
  });
}

function endAt(run: Run, tracker: Item | undefined): "from" | "to" | undefined {
  if (!tracker) return undefined;
  if (run.to?.item === tracker) return "to";
  return run.from?.item === tracker ? "from" : undefined;
}
