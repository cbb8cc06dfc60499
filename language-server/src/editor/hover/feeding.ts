import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { PvArray, StringPath } from "../../circuit/array.js";
import { label } from "../../design/facts.js";
import type { Item, Run } from "../../design/things.js";

/** The way from the strings to the tracker that a thing lies on, or hangs on: one line a string, at most six. */
export function arrayPlaces(assessment: Assessment, thing: Item | Run): string[] {
  const lines: string[] = [];
  for (const { arrays } of assessment.zones) {
    for (const array of arrays) {
      for (const path of array.strings) if (concerns(array, path, thing)) lines.push(pathText(array, path));
      for (const { spd, at } of array.surge)
        if (spd === thing)
          lines.push(l10n.t("{0} is tapped at {1} of the array {2}", spd.id, at?.id ?? l10n.t("nothing"), array.id));
    }
  }
  const shown = lines.slice(0, 6);
  if (lines.length > shown.length) shown.push(l10n.t("and {0} more", lines.length - shown.length));
  return shown;
}

function concerns(array: PvArray, path: StringPath, thing: Item | Run): boolean {
  if (thing === path.string || thing === array.tracker || thing === array.inverter) return true;
  return path.steps.includes(thing);
}

function pathText(array: PvArray, { string, steps }: StringPath): string {
  const end = array.tracker
    ? [array.tracker.id]
    : steps.length === 0
      ? [l10n.t("wired to nothing")]
      : [l10n.t("no tracker reached")];
  return [string.id, ...steps.map(label), ...end].join(" → ");
}
