import type { PvArray, Zone } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";
import type { Fix } from "./rule.js";
import { freeTrackers } from "./strings-of.js";

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

function endAt(run: Run, tracker: Item | undefined): "from" | "to" | undefined {
  if (!tracker) return undefined;
  if (run.to?.item === tracker) return "to";
  return run.from?.item === tracker ? "from" : undefined;
}
