import type { Installation } from "../circuit/installation.js";
import { wordOf } from "../design/facts.js";
import type { Item, Reading, Run } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { type DueProperty, type DueReading, dueReadings } from "./due-readings.js";
import type { Judge } from "./judge.js";
import { isAsBuilt } from "./label-missing.js";
import { hasMains } from "./mains.js";
import { listed } from "./phrases.js";
import { readingSubjects } from "./readings.js";
import { type Missing, type Outcome, rule } from "./rule.js";

const array: Source = { title: "IEC 62446-1", clause: "tests of the array before it is energised", basis: "read" };
const british: Source = { title: "BS 7671:2018", clause: "Part 6, initial verification", basis: "memory" };
const international: Source = { title: "IEC 60364-6", clause: "initial verification", basis: "memory" };

/** What is due on a thing, with what was read there; for a design that is not built yet, its site with nothing due. */
interface Subject {
  readonly thing: Item;
  readonly due?: DueReading;
  readonly readings: readonly Reading[];
}

/** Nothing is energised before everything is measured that shows whether it is right. */
export const readingMissing = rule<Subject>({
  id: "reading-missing",
  section: "Earthing, grid, papers",
  severity: "note",
  title: "Everything that has to be measured before energising is recorded.",
  what: "Once anything has been measured, or the site is said to be as built, lists what is still to be measured: on every string its voltage, current, polarity and insulation with the conditions of the day; at the supply its loop and fault current; on the circuits of this work their insulation, polarity, loop and RCD; on electrodes their resistance. The RCD of a circuit that goes on without the grid is tried in both modes.",
  why: "In a survey of people who say that they test, half left out insulation and earth. What is not measured before energising is measured by the first fault.",
  sources: { gb: [array, british], iec: [array, international] },
  examples: {
    holds: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 {
    open-circuit-voltage: 402 V
    short-circuit-current: 9.1 A
    irradiance: 640 W/m2
    cell-temperature: 28 degC
    polarity: correct
    insulation-resistance: 550 Mohm
    insulation-test-voltage: 1000 V
}
`,
    breaks: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { open-circuit-voltage: 402 V  cell-temperature: 28 degC }
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ thing }) => thing,
  judge: ({ thing, due, readings }, judge) =>
    due
      ? judgeDue(thing, due, readings, judge)
      : judge.notApplicable("nothing is measured yet, and the site is not said to be as built"),
});

function* subjectsOf(installation: Installation): Generator<Subject> {
  const { design, plants } = installation;
  if (design.readings.length === 0 && !isAsBuilt(design.site)) {
    if (design.site && plants.some(hasMains)) yield { thing: design.site, readings: [] };
    return;
  }
  const byTarget = new Map<Item | Run, Reading[]>();
  for (const { reading, target } of readingSubjects(installation)) {
    const own = byTarget.get(target);
    if (own) own.push(reading);
    else byTarget.set(target, [reading]);
  }
  for (const due of dueReadings(installation)) {
    const readings = [due.thing, ...due.also].flatMap((thing) => byTarget.get(thing) ?? []);
    yield { thing: due.thing, due, readings };
  }
}

function judgeDue(thing: Item, { properties }: DueReading, readings: readonly Reading[], judge: Judge): Outcome {
  const missing: DueProperty[] = [];
  const doubtful = new Set<Reading>();
  for (const due of properties) {
    const those = readings.filter((reading) => states(reading, due.property));
    if (those.some((reading) => due.mode === undefined || wordOf(reading, "mode") === due.mode)) continue;
    const undecided = those.filter((reading) => wordOf(reading, "mode") === undefined);
    if (undecided.length === 0) missing.push(due);
    for (const reading of undecided) doubtful.add(reading);
  }
  if (missing.length > 0) return stillDue(thing, missing, judge);
  if (doubtful.size > 0)
    return {
      outcome: "not-checked",
      missing: [...doubtful].map((reading): Missing => ({ thing: reading, property: "mode" })),
    };
  return judge.holds(`${properties.length} readings recorded`);
}

function states({ declaration }: Reading, property: string): boolean {
  return declaration.properties.some(({ name, value }) => name === property && value !== undefined);
}

function stillDue(thing: Item, missing: readonly DueProperty[], judge: Judge): Outcome {
  return judge.finding({
    what: `Still to be measured on ${thing.id}: ${listed(missing.map(nameOf))}.`,
    why: "What is not measured before energising is measured by the first fault.",
    todo: `Measure, and record it under measured ${thing.id}.`,
    spot: { thing, word: "name" },
  });
}

function nameOf({ property, mode }: DueProperty): string {
  if (mode === undefined) return property;
  return mode === "island" ? `${property} in an island` : `${property} with the grid`;
}
