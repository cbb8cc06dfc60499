import type { PvArray, StringPath } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import type { Judge } from "./judge.js";
import type { Outcome } from "./rule.js";

/** Whether anything opens the way of a string to its inverter. */
export function anIsolatorIsThere({ string, steps }: StringPath, array: PvArray, judge: Judge): Outcome {
  const { inverter, tracker } = array;
  if (!inverter || !tracker) return judge.notChecked(`${string.id} is wired to no inverter`);
  if (steps.some((step) => step.is === "item" && step.row?.through === "opens"))
    return judge.holds("an isolator on its way to the inverter");
  const builtIn = judge.flag(inverter, "built-in-dc-isolator");
  const name = inverter.part?.name ?? inverter.id;
  if (builtIn) return judgeBuiltIn(string, inverter, name, judge);
  return judge.finding({
    what: `Nothing between ${string.id} and ${tracker.id} opens the d.c. side, and ${name} ${builtIn === false ? "has no switch of its own" : "states no switch of its own"}.`,
    why: "In daylight the inverter could not be made dead for work or in a fire.",
    todo:
      builtIn === false
        ? "Put a d.c. isolator in at the inverter."
        : "Put a d.c. isolator in at the inverter; if its sheet names one inside, say built-in-dc-isolator: yes.",
    spot: { thing: string, word: "name" },
    related: [{ spot: { thing: inverter, property: "built-in-dc-isolator" }, message: "the inverter it is wired to" }],
  });
}

/** Whether the switch inside the inverter is enough is the site's choice: practitioners differ. */
function judgeBuiltIn(string: Item, inverter: Item, name: string, judge: Judge): Outcome {
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
  });
}
