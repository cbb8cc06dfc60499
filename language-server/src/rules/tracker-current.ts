import type { Item } from "../design/things.js";
import { clippedShare, workingCurrentWithGain } from "../physics/clipping.js";
import type { Derived, Source } from "../physics/figure.js";
import { parallelCurrent } from "../physics/short-circuit.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf } from "./array-figures.js";
import { separateFixes } from "./free-tracker.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { idsOf } from "./phrases.js";
import { rule } from "./rule.js";
import { landingSpot, type TrackerSubject, trackerOf, trackersOf } from "./strings-of.js";

const sheet: Source = {
  title: "maximum operating current of a tracker input, as inverter sheets state it",
  basis: "practice",
};

/** What a tracker can take of the working current of its strings. */
export const trackerCurrent = rule<TrackerSubject>({
  id: "tracker-current",
  section: "Strings and trackers",
  severity: "warning",
  title: "A tracker takes the whole working current of its strings.",
  what: "Adds the currents at maximum power of all strings on one tracker and holds the sum against the operating current of its input. Says what share is lost in full sun where the input clips.",
  why: "An inverter holds its input to its operating current by itself: nothing breaks, but what lies above it is never harvested. Whether that pays is the designer's decision, and should be one.",
  sources: { gb: [sheet], iec: [sheet] },
  examples: {
    holds: `string S1 is 10 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 10 x Hollin430
string S2 is 10 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: trackersOf,
  thing: trackerOf,
  judge(subject, judge) {
    const { tracker, array } = subject;
    if (array.strings.length === 0) return judge.notApplicable("nothing is wired to this tracker");
    const strings = array.strings.map(({ string }) => string);
    const [limit] = judge.need([tracker, "max-current"]);
    const working = workingCurrent(strings, judge);
    if (working.value <= limit.value) return judge.pass(working, limit, idsOf(strings));
    const [gives, takes] = formatApart(working, limit);
    const lost = clippedShare(working, limit);
    return judge.finding({
      what: `${idsOf(strings)} can give ${gives} at maximum power; ${tracker.id} takes ${takes}.`,
      why: `It clips: in full sun up to ${percent(lost.value)} of the power is lost.`,
      todo:
        strings.length > 1
          ? "Give each string a tracker of its own, or write down why the loss is accepted."
          : "Take an inverter whose input takes more, or write down why the loss is accepted.",
      spot: landingSpot(subject),
      value: working,
      limit,
      related: [
        { spot: { thing: tracker, property: "max-current" }, message: `${tracker.id} takes ${takes}` },
        ...strings.map((string) => ({
          spot: { thing: string },
          message: `${string.id}: ${formatFigure(workingCurrent([string], judge))}`,
        })),
      ],
      fixes: (asked) => separateFixes(subject, asked, "max-current", (moved) => workingCurrent(moved, asked)),
    });
  },
});

/** Currents at maximum power at standard test conditions, with the rear-side gain where one is declared, A. */
function workingCurrent(strings: readonly Item[], judge: Judge): Derived {
  const currents = strings.map((string) => {
    const module = moduleOf(string);
    const [current] = judge.need([module, "current-at-max-power"]);
    return workingCurrentWithGain(current, judge.quantity(module, "bifacial-gain"));
  });
  return parallelCurrent(currents, "Imp,max");
}
