import { readingDifference } from "../physics/expected-reading.js";
import type { Figure, Given, Source } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { expectedShortCurrent } from "./expected-string.js";
import type { Judge } from "./judge.js";
import { idsOf } from "./phrases.js";
import { unlike, withinTolerance } from "./reading-difference.js";
import { judgeOnce, latestReadings, type ReadingSubject } from "./readings.js";
import { type Outcome, rule } from "./rule.js";

const alike: Source = { title: "IEC 62446-1", clause: "strings alike within 5 % under stable light", basis: "read" };
const light: Source = { title: "IEC 62446-1", clause: "irradiance for measurements of current", basis: "memory" };
const translation: Source = {
  title: "IEC 60891",
  clause: "translation of short-circuit current by irradiance and temperature",
  basis: "memory",
};

/** A measured current is the one that the design gives under the conditions of the reading. */
export const readingCurrent = rule<ReadingSubject>({
  id: "reading-current",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "A measured short-circuit current is what the design gives at that irradiance and temperature.",
  what: "Carries the short-circuit current of the data sheet over to the irradiance and the cell temperature that were measured, adds the strings that feed what was measured, and compares the reading with the sum. Where a gain from light on the rear is declared, anything up to it is right too. Readings in weak light are not judged. Of several readings of one thing the latest counts.",
  why: "Too little current is shade, dirt, a bad joint or a string that is not connected; too much is a string that nobody expected there.",
  sources: { gb: [alike, light, translation], iec: [alike, light, translation] },
  examples: {
    holds: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { short-circuit-current: 9.1 A  irradiance: 640 W/m2  cell-temperature: 28 degC }
`,
    breaks: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { short-circuit-current: 7.9 A  irradiance: 640 W/m2  cell-temperature: 28 degC }
`,
  },
  over: "installation",
  subjects: (installation) => latestReadings(installation, "short-circuit-current"),
  thing: ({ target }) => target,
  judge: (subject, judge) => judgeOnce(judgeCurrent, subject, judge, () => judgeCurrent(subject, judge)),
});

function judgeCurrent(subject: ReadingSubject, judge: Judge): Outcome {
  const { reading, strings, target } = subject;
  const { least, most } = expectedShortCurrent(strings, reading, judge);
  const weak = weakLight(subject, judge);
  if (weak) return weak;
  const [stated] = judge.need([reading, "short-circuit-current"]);
  const read: Given = stated.value < 0 ? { ...stated, value: -stated.value } : stated;
  if (most !== least && read.value >= least.value && read.value <= most.value)
    return judge.holds(`between ${formatFigure(least)} and ${formatFigure(most)} with light on the rear`);
  const expected = read.value > most.value ? most : least;
  const difference = readingDifference(read, expected);
  const limit = judge.limit("reading-current-tolerance");
  const holds = withinTolerance(difference, limit, expected, judge);
  if (holds) return holds;
  const irradiance = judge.quantity(reading, "irradiance");
  const at = irradiance ? ` at ${formatFigure(irradiance)}` : "";
  return judge.finding({
    ...unlike({ target, read, expected, difference, limit, at }),
    why:
      difference.value < 0
        ? "Shade, dirt, a bad joint or a string that is not connected takes current away for good."
        : "More than the sheet gives comes from a string that nobody expected there, or from a meter that is wrong.",
    todo: `${fits(subject, read, expected)}Look at fuses, connectors, shade and dirt, and whether the irradiance was read in the plane of the modules.`,
    spot: { thing: reading, property: "short-circuit-current" },
    related: judge.limitSet("reading-current-tolerance", "the site's own tolerance"),
  });
}

function weakLight({ reading }: ReadingSubject, judge: Judge): Outcome | undefined {
  const [irradiance] = judge.need([reading, "irradiance"]);
  const least = judge.limit("lowest-reading-irradiance");
  if (irradiance.value >= least.value) return undefined;
  const [was, wanted] = formatApart(irradiance, least);
  return judge.notChecked(`read in ${was}: below ${wanted} a current says little`);
}

/** How near to a whole number of strings a current must be to say that it fits it. */
const wholeEnough = 0.1;

function fits({ strings }: ReadingSubject, read: Figure, expected: Figure): string {
  const fitting = (read.value / expected.value) * strings.length;
  const whole = Math.round(fitting);
  if (whole === strings.length || whole < 1 || Math.abs(fitting - whole) > wholeEnough) return "";
  const which = strings.length === 1 ? "one" : idsOf(strings);
  return `It would fit ${whole} ${whole === 1 ? "string" : "strings"} in place of ${which}. `;
}
