import type { PvArray, StringPath } from "../circuit/array.js";
import type { Item, Run } from "../design/things.js";
import { type Candidate, candidates, insertFixes, lastCut } from "./added-device.js";
import { isolatorComparisons } from "./isolator-device.js";
import type { Judge } from "./judge.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";

/** Whether anything opens the way of a string to its inverter. */
export function anIsolatorIsThere(way: StringPath, array: PvArray, judge: Judge): Outcome {
  const { string, steps } = way;
  const { inverter, tracker } = array;
  const fixes = (asked: Judge): Fix[] => addedIsolators(way, array, asked);
  if (!inverter || !tracker) return judge.notChecked(`${string.id} is wired to no inverter`);
  if (steps.some((step) => step.is === "item" && step.row?.through === "opens"))
    return judge.holds("an isolator on its way to the inverter");
  const builtIn = judge.flag(inverter, "built-in-dc-isolator");
  const name = inverter.part?.name ?? inverter.id;
  if (builtIn) return judgeBuiltIn(string, inverter, name, judge, fixes);
  return judge.finding({
    what: `Nothing between ${string.id} and ${tracker.id} opens the d.c. side, and ${name} ${builtIn === false ? "has no switch of its own" : "states no switch of its own"}.`,
    why: "In daylight the inverter could not be made dead for work or in a fire.",
    todo:
      builtIn === false
        ? "Put a d.c. isolator in at the inverter."
        : "Put a d.c. isolator in at the inverter; if its sheet names one inside, say built-in-dc-isolator: yes.",
    spot: { thing: string, word: "name" },
    related: [{ spot: { thing: inverter, property: "built-in-dc-isolator" }, message: "the inverter it is wired to" }],
    fixes,
  });
}

/** Isolators in scope that would hold in the last run before the inverter. */
function addedIsolators(way: StringPath, array: PvArray, judge: Judge): Fix[] {
  const cut = lastCut(way, () => true);
  return cut ? insertFixes([cut], arrayIsolators(cut.run, array, judge)) : [];
}

/** Isolators in scope that would hold in a run of an array. */
export function arrayIsolators(run: Run, array: PvArray, judge: Judge): Candidate[] {
  const strings = array.runs.get(run) ?? [];
  return candidates(judge, ["isolator"], (device) =>
    // Which way round one that is sensitive to polarity would be wired is not known before it is.
    judge.flag(device, "polarity-sensitive") === false
      ? eachOf(...isolatorComparisons({ device, strings, array }, judge))
      : [],
  );
}

/** Whether the switch inside the inverter is enough is the site's choice: practitioners differ. */
function judgeBuiltIn(
  string: Item,
  inverter: Item,
  name: string,
  judge: Judge,
  fixes: (asked: Judge) => Fix[],
): Outcome {
  const setting = "dc-isolator";
  const { word, origin } = judge.setting(setting);
  if (word === "built-in-accepted") return judge.holds("the switch built into its inverter");
  return judge.finding({
    what: `Only the switch inside ${name} opens the d.c. side of ${string.id}; this site asks for one outside it (${origin.text}).`,
    why: "An inverter that is taken off the wall takes its switch with it and leaves live ends behind.",
    todo: "Put a d.c. isolator in at the inverter, or say dc-isolator: built-in-accepted in the site's limits and why.",
    spot: { thing: string, word: "name" },
    related: [
      { spot: { thing: inverter, property: "built-in-dc-isolator" }, message: "the switch of its own" },
      ...judge.limitSet(setting, "the site's own choice"),
    ],
    fixes,
  });
}
