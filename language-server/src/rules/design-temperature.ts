import type { Installation } from "../circuit/installation.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { rule } from "./rule.js";

const property = "lowest-temperature-basis";

const array: Source = {
  title: "IEC 62548-1",
  clause: "open-circuit voltage at the lowest expected temperature",
  basis: "memory",
};
const differ: Source = { title: "practice of designers and inspectors, who differ", basis: "practice" };

const names: Readonly<Record<string, string>> = {
  "record-low": "the lowest ever recorded",
  "statistical-minimum": "a yearly minimum of statistics",
};

/** The cold that every string's voltage is worked from is as rare as the site asks for. */
export const designTemperature = rule<Item>({
  id: "design-temperature",
  section: "Strings and trackers",
  severity: "warning",
  title: "The lowest temperature of the site is of the sort that its designer means to stand.",
  what: "Reads whether the site's lowest temperature is the lowest ever recorded or a yearly minimum of statistics, and holds that against the setting lowest-temperature-basis of the site's limits. The record serves for either, being the colder of the two.",
  why: "Every check of a string's highest voltage begins with this one figure. Designers differ about which sort it should be, and a few kelvin are a module more or less; what must not be is that nobody knows which was taken.",
  sources: { gb: [array, differ], iec: [array, differ] },
  examples: {
    holds: `site "Alder Cottage" {
    rules: gb
    lowest-temperature: -10 degC
    lowest-temperature-basis: record-low
}
string S1 is 11 x Hollin430
`,
    breaks: `site "Alder Cottage" {
    rules: gb
    lowest-temperature: -6 degC
    lowest-temperature-basis: statistical-minimum
}
string S1 is 11 x Hollin430
`,
  },
  over: "installation",
  subjects: siteWithArray,
  thing: (site) => site,
  judge(site, judge) {
    const temperature = judge.needSite("lowest-temperature");
    const stated = judge.needSiteWord(property);
    const { word: wanted, origin } = judge.setting(property);
    if (stated === wanted) return judge.holds(`${stated}, as the design asks for`);
    if (stated === "record-low") return judge.holds(`${stated}, colder than the design asks for`);
    return judge.finding({
      what: `The lowest temperature, ${formatFigure(temperature)}, is ${names[stated]}; this design asks for ${names[wanted]} (${origin.text}).`,
      why: "In a record winter the strings give more than any check of their voltage was worked from.",
      todo: `State the lowest temperature recorded near the site, or say ${property}: ${stated} in the site's limits and why.`,
      spot: { thing: site, property },
      related: [
        { spot: { thing: site, property: "lowest-temperature" }, message: "the lowest temperature" },
        ...judge.limitSet(property, "the site's own choice"),
      ],
    });
  },
});

function* siteWithArray({ design, zones }: Installation): Generator<Item> {
  const hasStrings = zones.some(({ arrays }) => arrays.some(({ strings }) => strings.length > 0));
  if (design.site && hasStrings) yield design.site;
}
