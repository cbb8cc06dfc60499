import { fact, label } from "../design/facts.js";
import type { Source } from "../physics/figure.js";
import { largestCount } from "../physics/string-length.js";
import { formatApart } from "../physics/working.js";
import { moduleOf, stringColdVoltage } from "./array-figures.js";
import { countFix } from "./count-fix.js";
import { NotKnown } from "./judge.js";
import { rule } from "./rule.js";
import { type StringSubject, stringOf, stringsOf } from "./strings-of.js";
import { coldModuleVoltage, mostModules } from "./voltage-limits.js";

const british: Source = { title: "BS 7671:2018+A4:2026", clause: "712.414.101", basis: "memory" };
const international: Source = {
  title: "IEC 60364-7-712",
  clause: "highest d.c. voltage on and in buildings",
  basis: "memory",
};
const design: Source = {
  title: "IEC 62548-1:2023",
  clause: "voltage limits by place of installation",
  basis: "memory",
};

/** What carries the array, in words. */
const places: Readonly<Record<string, string>> = {
  dwelling: "on a dwelling",
  "other-building": "on a building",
  "ground-mounted": "on the ground",
};

/** The voltage of a string stays within what the rule set allows where it stands. */
export const buildingVoltage = rule<StringSubject>({
  id: "building-voltage",
  section: "Strings and trackers",
  severity: "error",
  title: "No string exceeds the voltage that is allowed on its kind of building.",
  what: "Holds the open-circuit voltage of each string at the site's lowest temperature against the highest d.c. voltage that the rule set allows for what carries the array: a dwelling, another building, the ground. A site may set its own figure in its limits.",
  why: "People live and work beside an array on a building, and nobody can switch it off. Above the limit it may only stand where none but trained people come near.",
  sources: { gb: [british], iec: [international, design] },
  examples: {
    holds: `string S1 is 14 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 24 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: stringsOf,
  thing: stringOf,
  judge({ path, array }, judge) {
    const { string } = path;
    const { site } = judge;
    const building = judge.siteWord("building");
    if (!site) throw new NotKnown([], "there is no site, so it is not known what carries the array");
    if (building === undefined) return judge.unknown(site, "building");
    const name = `${building}-dc-voltage`;
    const limit = judge.limit(name);
    const voltage = stringColdVoltage(string, judge);
    if (voltage.value <= limit.value) return judge.pass(voltage, limit, building);
    const [reached, allowed] = formatApart(voltage, limit);
    const perModule = coldModuleVoltage(string, judge);
    const most = largestCount(limit, perModule).value;
    const isAssumed = fact(site, "building")?.origin.kind === "assumed";
    return judge.finding({
      what: `${string.id}: ${string.count} × ${label(moduleOf(string))} reach ${reached}; ${allowed} is the most that is allowed ${places[building] ?? "here"}${isAssumed ? " (assumed: the site does not say what the building is)" : ""}.`,
      why: "People live and work beside conductors that nobody can switch off.",
      todo: most > 0 ? `Fit at most ${most} in series.` : "Take modules of a lower voltage.",
      spot: { thing: string, word: "count" },
      value: voltage,
      limit,
      related: [
        { spot: { thing: site, property: "building" }, message: `${allowed} is allowed ${places[building] ?? ""}` },
        ...judge.limitSet(name, "the site's own limit"),
      ],
      fixes: (asked) => {
        const holds = Math.min(most, mostModules(path, array, asked) ?? most);
        return countFix(string, holds, limit, asked);
      },
    });
  },
});
