import type { Source } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { stringMaximumCurrent, sumOfMaximumCurrents } from "./array-figures.js";
import { separateFixes } from "./free-tracker.js";
import { idsOf } from "./phrases.js";
import { rule } from "./rule.js";
import { landingSpot, type TrackerSubject, trackerOf, trackersOf } from "./strings-of.js";

const current: Source = { title: "IEC 62548-1", clause: "maximum current of a PV array, K_I", basis: "read" };
const inverter: Source = {
  title: "IEC 62109-1",
  clause: "maximum short-circuit current of the array that an input is declared for",
  basis: "memory",
};

/** The short-circuit current of everything on a tracker stays within what its input stands. */
export const trackerShortCircuit = rule<TrackerSubject>({
  id: "tracker-short-circuit",
  section: "Strings and trackers",
  severity: "error",
  title: "The short-circuit current of all strings on a tracker stays within what its input stands.",
  what: "Adds the maximum short-circuit currents of all strings on one tracker (the rule set's factor times Isc, and the rear-side gain of a bifacial module where one is declared) and holds the sum against the short-circuit current that the maker declares the input for. Declare the gain where the ground is bright or snow lies long.",
  why: "This is not the operating current: an inverter clips that by itself. The short-circuit current is what the array drives into a fault inside the inverter, and what its input and its own switch are built to survive.",
  sources: { gb: [current, inverter], iec: [current, inverter] },
  examples: {
    holds: `string S1 is 10 x Hollin430
string S2 is 10 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv2: 12 m of Solar4
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
    const [limit] = judge.need([tracker, "max-short-circuit-current"]);
    const driven = sumOfMaximumCurrents(strings, judge);
    if (driven.value <= limit.value) return judge.pass(driven, limit, idsOf(strings));
    const [drives, stands] = formatApart(driven, limit);
    const isSeveral = strings.length > 1;
    return judge.finding({
      what: `${idsOf(strings)} can drive ${drives} of short-circuit current into ${tracker.id}, which stands ${stands}.`,
      why: "An operating current above its limit only clips; a short-circuit current above its limit can destroy the input.",
      todo: isSeveral
        ? "Give each string a tracker of its own, or take an inverter whose input stands more."
        : "Take modules of a lower current, or an inverter whose input stands more.",
      spot: landingSpot(subject),
      value: driven,
      limit,
      related: [
        { spot: { thing: tracker, property: "max-short-circuit-current" }, message: `${tracker.id} stands ${stands}` },
        ...judge.limitSet("short-circuit-factor", "the site's own factor"),
        ...strings.map((string) => ({
          spot: { thing: string },
          message: `${string.id}: ${formatFigure(stringMaximumCurrent(string, judge))}`,
        })),
      ],
      fixes: (asked) =>
        separateFixes(subject, asked, "max-short-circuit-current", (moved) => sumOfMaximumCurrents(moved, asked)),
    });
  },
});
