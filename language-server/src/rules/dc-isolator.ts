import type { PvArray, StringPath, Zone } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import { isolatorComparisons } from "./isolator-device.js";
import { anIsolatorIsThere } from "./isolator-there.js";
import { rule } from "./rule.js";
import { eachOf } from "./several.js";
import { stringsOf } from "./strings-of.js";

/** Either the way of a string, which must hold an isolator, or an isolator, which must be fit for what it opens. */
export type IsolatorSubject =
  | { readonly way: StringPath; readonly array: PvArray }
  | { readonly device: Item; readonly strings: readonly Item[]; readonly array: PvArray };

function* subjects(zone: Zone): Generator<IsolatorSubject> {
  for (const { path, array } of stringsOf(zone)) yield { way: path, array };
  const seen = new Set<Item>();
  for (const array of zone.arrays) {
    for (const [device, strings] of array.devices) {
      if (device.row?.through !== "opens" || seen.has(device)) continue;
      seen.add(device);
      yield { device, strings, array };
    }
  }
}

export const dcIsolator = rule<IsolatorSubject>({
  id: "dc-isolator",
  section: "D.c. cables, connectors, isolation",
  severity: "error",
  title: "A switch made for arrays opens both conductors between each string and its inverter.",
  what: "Looks for an isolator, or a switch built into the inverter, on the way of each string. Whether the built-in one is enough by itself is argued about: the setting dc-isolator of the site's limits says so. Then at each isolator: made for d.c.; a category that is tested for arrays; all live conductors, in one movement; rated voltage and current, at the pole arrangement that is wired, against the highest open-circuit voltage and short-circuit current; fed from its marked side where it is sensitive to polarity; lockable.",
  why: "Isolators are the part of an array that has burnt most often. A d.c. arc does not go out by itself as an a.c. arc does a hundred times a second, so a switch that is made for a.c., wired the wrong way round or too weak for the voltage may draw one and keep it.",
  sources: {
    gb: [
      {
        title: "BS 7671:2018",
        clause: "712.537.2.101 means of isolation, 712.537.2.2.101 suitable devices",
        basis: "read",
      },
      { title: "UTE C 15-712-1", clause: "Ue at least UOC MAX, Ie at least 1.25 · Isc, all poles", basis: "read" },
      { title: "IEC 60947-3", clause: "utilisation categories DC-PV", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-7-712", clause: "712.537, isolation and switching", basis: "memory" },
      { title: "UTE C 15-712-1", clause: "Ue at least UOC MAX, Ie at least 1.25 · Isc, all poles", basis: "read" },
      { title: "IEC 60947-3", clause: "utilisation categories DC-PV", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
`,
    breaks: `part Toggle40 is isolator {
    supply: ac  rated-voltage: 440 V  rated-current: 40 A  poles: 2
    utilisation-category: AC-22A  lockable: yes  polarity-sensitive: no
}
string S1 is 11 x Hollin430
isolator Q1 is Toggle40
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
`,
  },
  subjects,
  thing: (subject) => ("way" in subject ? subject.way.string : subject.device),
  judge: (subject, judge) =>
    "way" in subject
      ? anIsolatorIsThere(subject.way, subject.array, judge)
      : eachOf(...isolatorComparisons(subject, judge)),
});
