import type { Item } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import { coldVoltage, moduleOf, modulesInSeries } from "./array-figures.js";
import { freeTrackerFixes } from "./free-tracker.js";
import type { Judge } from "./judge.js";
import type { ParallelString } from "./parallel-strings.js";
import type { Fix } from "./rule.js";
import { mostModules } from "./voltage-limits.js";

/** Wires a string that lands on the tracker by a run of its own to a tracker that is free. */
export function separateTracker({ path, array, zone }: ParallelString): Fix[] {
  const own = array.landing.filter((run) => {
    const strings = array.runs.get(run);
    return strings?.length === 1 && strings[0] === path.string;
  });
  return freeTrackerFixes(own, array, zone, () => `${path.string.id} alone`);
}

/** Makes a string like its neighbour: its module, its count, if every voltage limit then holds. */
export function sameAsFixes({ path, array }: ParallelString, model: Item, judge: Judge): Fix[] {
  const { string } = path;
  const module = moduleOf(string);
  const other = moduleOf(model);
  if (module !== other)
    return [
      {
        title: `Make ${string.id} of ${other.name}`,
        preview: `${string.count} x ${other.name}, as ${model.id}`,
        does: "set-part",
        thing: string,
        part: other.name,
      },
    ];
  const most = mostModules(path, array, judge);
  if (most !== undefined && model.count > most) return [];
  const voltage = coldVoltage(modulesInSeries(string, model.count), module, judge);
  return [
    {
      title: `Set ${string.id} to ${model.count} x ${module.name}`,
      preview: `${model.count} modules, as ${model.id}: ${formatFigure(voltage)} at its coldest`,
      does: "set-count",
      thing: string,
      count: model.count,
    },
  ];
}
