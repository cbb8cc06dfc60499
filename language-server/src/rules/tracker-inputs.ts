import type { Source } from "../physics/figure.js";
import { counted } from "../physics/make.js";
import { formatFigure } from "../physics/working.js";
import { freeTrackerFixes } from "./free-tracker.js";
import { idsOf, listed } from "./phrases.js";
import { rule } from "./rule.js";
import { landingSpot, type TrackerSubject, trackerOf, trackersOf } from "./strings-of.js";

const sheet: Source = { title: "number of string inputs, as inverter sheets state it", basis: "practice" };

/** No more runs land on a tracker than it has inputs. */
export const trackerInputs = rule<TrackerSubject>({
  id: "tracker-inputs",
  section: "Strings and trackers",
  severity: "error",
  title: "No more runs from the array land on a tracker than it has inputs.",
  what: "Counts the runs from the array that land on a tracker itself and holds them against its number of inputs. Runs that are joined in a combiner before count as the one that leaves it.",
  why: "An input is a pair of connectors made for one pair of conductors. A second pair forced into it, or joined to it by a lead made on the roof, is a joint that heats up and that nothing protects.",
  sources: { gb: [sheet], iec: [sheet] },
  examples: {
    holds: `string S1 is 8 x Hollin430
string S2 is 8 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv2: 12 m of Solar4
`,
    breaks: `string S1 is 8 x Hollin430
string S2 is 8 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: trackersOf,
  thing: trackerOf,
  judge(subject, judge) {
    const { tracker, array, zone } = subject;
    const runs = array.landing.filter((run) => array.runs.has(run));
    if (runs.length === 0) return judge.notApplicable("nothing is wired to this tracker");
    const [inputs] = judge.need([tracker, "inputs"]);
    const landing = counted("N", runs.length, "runs that land on the tracker");
    if (runs.length <= inputs.value) return judge.pass(landing, inputs, tracker.id);
    const names = listed(runs.map(({ id }) => id));
    return judge.finding({
      what: `${runs.length} runs land on ${tracker.id} (${names}), which has ${formatFigure(inputs)} ${inputs.value === 1 ? "input" : "inputs"}.`,
      why: "An input is made for one pair of conductors; a second pair in it is a joint that heats up.",
      todo: "Join the strings in a combiner, or wire one of them to another tracker.",
      spot: landingSpot(subject),
      value: landing,
      limit: inputs,
      related: [
        { spot: { thing: tracker, property: "inputs" }, message: `${tracker.id} has ${formatFigure(inputs)}` },
        ...runs.map((run) => ({
          spot: { thing: run, word: run.to?.item === tracker ? ("to" as const) : ("from" as const) },
          message: `${run.id} from ${idsOf(array.runs.get(run) ?? [])}`,
        })),
      ],
      fixes: (asked) =>
        freeTrackerFixes(runs.slice(-1), array, zone, (free) => {
          const room = asked.quantity(free, "inputs");
          return room && room.value >= 1
            ? `1 run, ${formatFigure(room)} ${room.value === 1 ? "input" : "inputs"}`
            : undefined;
        }),
    });
  },
});
