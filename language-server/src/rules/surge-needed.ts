import type { PvArray, Zone } from "../circuit/array.js";
import { fact } from "../design/facts.js";
import type { Thing } from "../design/things.js";
import type { Derived, Given } from "../physics/figure.js";
import { criticalLength } from "../physics/surge.js";
import { formatApart } from "../physics/working.js";
import { type Judge, NotKnown } from "./judge.js";
import { idsOf, stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { acNeed, type SupplySubject, wiredSupplies } from "./surge-ac-needed.js";
import { addedSurge } from "./surge-choice.js";
import { placeAtInverter, tapFixes } from "./surge-places.js";
import { routeLength } from "./surge-route.js";
import { asksForType1 } from "./surge-type-needed.js";

export interface ArraySubject {
  readonly array: PvArray;
  readonly zone: Zone;
}

/** Arrays with strings on them. */
export function* arraysOf(zone: Zone): Generator<ArraySubject> {
  for (const array of zone.arrays) if (array.strings.length > 0) yield { array, zone };
}

/** What a check of a whole array is told of: its tracker, or its first string while it has none. */
export function thingOfArray({ array }: ArraySubject): Thing {
  return array.tracker ?? array.strings[0]!.string;
}

const buildings: Readonly<Record<string, string>> = {
  dwelling: "a dwelling",
  "other-building": "a building like this",
  "ground-mounted": "a plant on the ground",
};

export const surgeNeeded = rule<ArraySubject | SupplySubject>({
  id: "surge-needed",
  section: "Surge",
  severity: "warning",
  title: "Long d.c. routes where lightning is frequent, and the a.c. side, have surge protective devices.",
  what: "Where the site has lightning protection that the array does not keep its separation distance to, asks for a surge protective device. Otherwise adds up the d.c. routes of an inverter and holds the sum against the critical length, which the kind of site and the lightning ground flash density give. Runs that are said to share a route count once. An array with a surge protective device, or on an inverter with its own, needs no more here: the other rules of this section look at the device. On the a.c. side asks for one where the building has lightning protection; else by the risk clause of the rule set, unless the owner has declined and the reason is recorded.",
  why: "A stroke nearby induces a voltage in every loop of cable. The longer the routes and the more frequent lightning, the likelier one of them destroys the inverter.",
  sources: {
    gb: [
      {
        title: "BS 7671:2018, section 712",
        clause: "protection against overvoltages, critical length",
        basis: "memory",
      },
      { title: "UTE C 15-712-1", clause: "critical length of the d.c. route by ground flash density", basis: "read" },
      { title: "CLC/TS 50539-12", clause: "devices where the separation distance is not kept", basis: "memory" },
      { title: "BS 7671:2018", clause: "443.4.1, the owner may decline where only loss is at stake", basis: "read" },
    ],
    iec: [
      { title: "IEC 60364-7-712", clause: "712.443, critical length", basis: "memory" },
      { title: "UTE C 15-712-1", clause: "critical length of the d.c. route by ground flash density", basis: "read" },
      { title: "CLC/TS 50539-12", clause: "devices where the separation distance is not kept", basis: "memory" },
      { title: "IEC 60364-4-44:2015", clause: "443.4 and 443.5, calculated risk level", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 30 m of Solar4
`,
    breaks: `site "Thunder Ridge" {
    rules: gb
    lowest-temperature: -10 degC
    ground-flash-density: 8 /km2/yr
    building: dwelling
    lightning-protection: none
}
string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 30 m of Solar4
`,
  },
  subjects: arraysOf,
  alsoInPlants: wiredSupplies,
  thing: (subject) => ("supply" in subject ? subject.supply : thingOfArray(subject)),
  judge: (subject, judge) => {
    if ("supply" in subject) return acNeed(subject, judge);
    const { array } = subject;
    if (array.surge.length > 0) return judge.holds("a surge protective device is fitted");
    if (array.inverter && judge.flag(array.inverter, "built-in-surge-protection"))
      return judge.holds("the inverter has surge protective devices of its own");
    return eachOf(
      () => nearRods(array, judge),
      () => byLength(subject, judge),
    );
  },
});

/** Near lightning rods a device is needed whatever the length: it joins the array's conductors to earth for the stroke. */
function nearRods(array: PvArray, judge: Judge): Outcome | undefined {
  const { tracker, strings } = array;
  if (!asksForType1(judge.needSiteWord("lightning-protection"))) return undefined;
  const { site } = judge;
  return judge.finding({
    severity: "error",
    what: `Nothing on ${tracker?.id ?? strings[0]?.string.id} protects from surges, and the array keeps no separation distance to the lightning protection.`,
    why: "Part of the lightning current itself may come down the array's cables.",
    todo: "Fit type 1 surge protective devices; or keep the separation distance and say so.",
    spot: { thing: strings[0]!.string, word: "name" },
    related: site
      ? [{ spot: { thing: site, property: "lightning-protection" }, message: "the separation distance is not kept" }]
      : [],
    fixes: (asked) => tapped(array, asked),
  });
}

function byLength({ array, zone }: ArraySubject, judge: Judge): Outcome {
  const { inverter, tracker } = array;
  if (!inverter) return judge.notChecked("it is wired to no inverter: the length of its route is not known");
  const density = judge.needSite("ground-flash-density");
  if (density.value === 0) return judge.notApplicable("no lightning is expected here");
  const length = routeLength(zone, judge);
  const critical = criticalLength(constantOf(judge), density);
  if (length.value < critical.value) return judge.pass(length, critical);
  const [long, bound] = formatApart(length, critical);
  const { site } = judge;
  const isSilent = judge.flag(inverter, "built-in-surge-protection") === undefined;
  return judge.finding({
    what: `${long} of d.c. route lead to ${inverter.id}, and nothing on ${tracker?.id} protects it from surges; here ${buildings[judge.siteWord("building") ?? ""] ?? "a site"} needs that from ${bound} on.`,
    why: "Lightning nearby drives surges along long routes, and the inverter is at their end.",
    todo: `Fit surge protective devices at ${inverter.id}${isSilent ? "; if its sheet says that it has its own, say built-in-surge-protection: yes" : ""}. Runs that share a path may name it as their route: they then count once.`,
    spot: { thing: array.strings[0]!.string, word: "name" },
    value: length,
    limit: critical,
    related: [
      ...(site ? [stated(site, "ground-flash-density", density)] : []),
      {
        spot: { thing: inverter, word: "name" },
        message: `not protected from surges: ${idsOf(array.strings.map(({ string }) => string))}`,
      },
    ],
    fixes: (asked) => tapped(array, asked),
  });
}

/** Devices in scope that would hold, tapped off near the inverter. */
function tapped(array: PvArray, judge: Judge): Fix[] {
  const [path] = array.strings;
  return path ? tapFixes(placeAtInverter(path, array), addedSurge(array, "inverter", judge)) : [];
}

/** The rule set's constant for the kind of site; where that was assumed, so is the constant. */
function constantOf(judge: Judge): Given | Derived {
  const word = judge.needSiteWord("building");
  const constant = judge.ruleSet.criticalLengthConstants.get(word);
  if (!constant) throw new NotKnown([], `${judge.ruleSet.title} gives no critical length for ${word}`);
  const origin = judge.site && fact(judge.site, "building")?.origin;
  return origin?.kind === "assumed" ? { ...constant, origin: { ...origin, source: constant.origin.source } } : constant;
}
