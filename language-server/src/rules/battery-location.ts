import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import type { BatteryPlace } from "./ac-rules.js";
import type { Judge } from "./judge.js";
import { type Outcome, type Related, rule } from "./rule.js";
import { eachOf } from "./several.js";

/** Words of `place` as one would say them. */
const places: Readonly<Record<string, string>> = {
  indoors: "indoors",
  outdoors: "outdoors",
  loft: "in a loft",
  garage: "in a garage",
  outbuilding: "in an outbuilding",
  cellar: "in a cellar",
  "escape-route": "on an escape route",
  "sleeping-room": "in a room where people sleep",
};

export const batteryLocation = rule<Item>({
  id: "battery-location",
  section: "Battery and backup",
  severity: "error",
  title: "No battery stands where a fire in it would trap people, and a fire indoors is noticed.",
  what: "Holds the place of each battery against the rule set's list: places that it excludes are errors, places that it advises against are warnings, and a place other than the one that it prefers is a note. Where the rule set asks for a fire alarm beside batteries indoors, looks for that too. What the list says of doors, windows and stored goods close by needs somebody who looks.",
  why: "A cell that fails burns hot, gives off toxic gas and cannot be put out. What decides is whether people notice it in time and can get out.",
  sources: {
    gb: [{ title: "PAS 63100:2024 (a specification, not a statute)", clause: "6.5, location", basis: "read" }],
    iec: [{ title: "caution about fires of batteries in dwellings", basis: "practice" }],
  },
  examples: {
    holds: `inverter INV is Fell5
battery BAT is Stack51 { place: outdoors }
run W1 from BAT to INV.battery: 1.8 m of Lead35
`,
    breaks: `inverter INV is Fell5
battery BAT is Stack51 { place: loft }
run W1 from BAT to INV.battery: 1.8 m of Lead35
`,
  },
  over: "plant",
  subjects: (plant: Plant) => plant.batteries.map(({ battery }) => battery),
  thing: (battery) => battery,
  judge: (battery, judge) =>
    eachOf(
      () => place(battery, judge),
      () => fireAlarm(battery, judge),
    ),
});

function place(battery: Item, judge: Judge): Outcome {
  const word = judge.needWord(battery, "place");
  const { batteryPlaces } = judge.ruleSet.ac;
  const said = batteryPlaces.get(word);
  const related: Related[] = [
    { spot: { thing: battery, property: "place" }, message: `${battery.id}, place: ${word}` },
  ];
  const what = `${battery.id} stands ${places[word] ?? word}`;
  const spot = { thing: battery, property: "place" } as const;
  if (said?.verdict === "preferred") return judge.holds(`${places[word] ?? word}: ${said.why}`);
  if (said)
    return judge.finding({
      severity: said.verdict === "excluded" ? "error" : "warning",
      what: `${what}, which ${nameOf(said.source)} ${said.verdict === "excluded" ? "excludes" : "advises against"}.`,
      why: `${capital(said.why)}.`,
      todo: "Choose another place, or record in a departure who accepts the risk and why.",
      spot,
      related,
    });
  const preferred = preferredPlace(batteryPlaces);
  if (!preferred) return judge.holds(`nothing is said against ${places[word] ?? word}`);
  const [better, because] = preferred;
  return judge.finding({
    severity: "note",
    what: `${what}; ${nameOf(because.source)} prefers ${places[better] ?? better} where that can be done.`,
    why: `${capital(because.why)}.`,
    todo: `Put it ${places[better] ?? better}, or say in a departure why that cannot be done.`,
    spot,
    related,
  });
}

function preferredPlace(all: ReadonlyMap<string, BatteryPlace>): [string, BatteryPlace] | undefined {
  return [...all].find(([, { verdict }]) => verdict === "preferred");
}

function fireAlarm(battery: Item, judge: Judge): Outcome | undefined {
  const source = judge.ruleSet.ac.batteryFireDetection;
  const word = judge.word(battery, "place");
  // An unknown place is named by the other comparison already.
  if (!source || word === undefined || word === "outdoors") return undefined;
  if (judge.needFlag(battery, "fire-detection")) return judge.holds("a fire or heat alarm is fitted where it stands");
  return judge.finding({
    severity: "warning",
    what: `No fire or heat alarm is fitted where ${battery.id} stands (${nameOf(source)}, ${source.clause}).`,
    why: "A fire in it is then noticed by its smoke, which is late indoors.",
    todo: "Fit an alarm there that is linked with the others of the building.",
    spot: { thing: battery, property: "fire-detection" },
    related: [{ spot: { thing: battery, property: "fire-detection" }, message: `${battery.id}, fire-detection: no` }],
  });
}

/** As one would say it: without what is said about the publication, and a habit of the trade has no title. */
function nameOf({ basis, title }: Source): string {
  return basis === "practice" ? "good practice" : title.replace(/ \(.*\)$/, "");
}

function capital(clause: string): string {
  return clause.charAt(0).toUpperCase() + clause.slice(1);
}
