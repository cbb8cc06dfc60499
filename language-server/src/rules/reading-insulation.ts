import type { Item } from "../design/things.js";
import { insulationSystemVoltage } from "../physics/expected-reading.js";
import type { Derived, Figure, Given, Source } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { circuitInsulationRow } from "./ac-rules.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import { judgeOnce, latestReadings, type ReadingSubject } from "./readings.js";
import { type Outcome, rule } from "./rule.js";
import { insulationRow } from "./rule-set.js";
import { eachOf } from "./several.js";

const array: Source = { title: "IEC 62446-1", clause: "insulation resistance of arrays", basis: "read" };
const british: Source = { title: "BS 7671:2018", clause: "Table 64, insulation resistance of circuits", basis: "read" };
const international: Source = { title: "IEC 60364-6", clause: "Table 6.1, insulation resistance", basis: "memory" };

/** What an insulation test has to reach, and at which voltage. */
interface Test {
  readonly voltage: Given;
  readonly least: Given;
  /** The voltage that chose the row. */
  readonly system: Figure;
}

/** An insulation resistance is high enough, and was taken at the right test voltage. */
export const readingInsulation = rule<ReadingSubject>({
  id: "reading-insulation",
  section: "Earthing, grid, papers",
  severity: "error",
  title:
    "A measured insulation resistance is high enough, and was taken at the test voltage that its circuit asks for.",
  what: "Chooses the row of the table by the string's open-circuit voltage with the factor of the standard, or by the nominal voltage of an a.c. circuit, and holds the reading against the least resistance there. A test at too low a voltage proves nothing, whatever it reads; one at a higher voltage is said, because it may harm what is connected. Of several readings of one thing the latest counts.",
  why: "Damp in a connector and a nicked cable show in this reading long before they start a fire or trip the inverter on every wet morning.",
  sources: { gb: [array, british], iec: [array, international] },
  examples: {
    holds: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { insulation-resistance: 550 Mohm  insulation-test-voltage: 1000 V }
`,
    breaks: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { insulation-resistance: 550 Mohm  insulation-test-voltage: 500 V }
`,
  },
  over: "installation",
  subjects: (installation) => latestReadings(installation, "insulation-resistance"),
  thing: ({ target }) => target,
  judge: (subject, judge) => judgeOnce(judgeInsulation, subject, judge, () => judgeInsulation(subject, judge)),
});

function judgeInsulation(subject: ReadingSubject, judge: Judge): readonly Outcome[] {
  const test = testOf(subject, judge);
  const used = judge.quantity(subject.reading, "insulation-test-voltage");
  // A rounding error of the writer's unit makes no other voltage.
  const compared = used && Math.sign(Math.round(used.value - test.voltage.value));
  return eachOf(
    () => judgeResistance(subject, test, compared, judge),
    () => judgeVoltage(subject, test, compared, judge),
  );
}

function testOf({ strings, plant, target }: ReadingSubject, judge: Judge): Test {
  const { ruleSet } = judge;
  if (strings.length > 0) {
    const system = highestSystemVoltage(strings, judge);
    const row = insulationRow(ruleSet, system.value);
    if (!row) throw new NotKnown([], `no test is given for ${formatFigure(system)}`);
    return { voltage: row.testVoltage, least: row.leastResistance, system };
  }
  if (!plant || target.kind === "battery")
    throw new NotKnown([], `${ruleSet.title} gives no insulation test for ${target.id}`);
  const [supply] = plant.supplies;
  if (!supply) throw new NotKnown([], "no supply says the nominal voltage");
  const [system] = judge.need([supply, "voltage"]);
  const row = circuitInsulationRow(ruleSet.ac, system.value);
  if (!row) throw new NotKnown([], `no test is given for ${formatFigure(system)}`);
  return { voltage: row.testVoltage, least: row.leastResistance, system };
}

function highestSystemVoltage(strings: readonly Item[], judge: Judge): Derived {
  let highest: Derived | undefined;
  for (const string of strings) {
    const [voltage] = judge.need([moduleOf(string), "open-circuit-voltage"]);
    const modules = modulesInSeries(string);
    const system = insulationSystemVoltage({ modules, voltage }, judge.ruleSet.insulationVoltageFactor);
    if (!highest || system.value > highest.value) highest = system;
  }
  if (!highest) throw new NotKnown([], "no string feeds what was measured");
  return highest;
}

/** Only a test at its full voltage can pass; below the least resistance is below it at any. */
function judgeResistance(
  { reading, target }: ReadingSubject,
  { least }: Test,
  compared: number | undefined,
  judge: Judge,
): Outcome | undefined {
  const [resistance] = judge.need([reading, "insulation-resistance"]);
  if (resistance.value >= least.value)
    return compared === undefined || compared < 0
      ? undefined
      : judge.passAtLeast(resistance, least, "least resistance");
  const [read, wanted] = formatApart(resistance, least);
  return judge.finding({
    what: `${target.id}: ${read} to earth; ${wanted} is the least.`,
    why: "Somewhere a conductor touches damp or metal: the inverter will not start, or a second fault makes an arc.",
    todo: "Part the circuit in halves until the fault is found; take surge protective devices off for the test.",
    spot: { thing: reading, property: "insulation-resistance" },
    value: resistance,
    limit: least,
  });
}

function judgeVoltage(
  { reading, target }: ReadingSubject,
  { voltage, system }: Test,
  compared: number | undefined,
  judge: Judge,
): Outcome {
  const [used] = judge.need([reading, "insulation-test-voltage"]);
  if (compared === 0) return judge.holds(`tested at ${formatFigure(voltage)}`);
  const isLow = (compared ?? 0) < 0;
  const [was, wanted] = formatApart(used, voltage);
  return judge.finding({
    severity: isLow ? "error" : "warning",
    what: `${target.id} was tested at ${was}; ${wanted} is the test voltage for ${system.symbol} = ${formatFigure(system)}.`,
    why: isLow
      ? "At less than its own voltage a weak insulation still looks sound."
      : "A higher test voltage may harm modules and surge protective devices.",
    todo: `Test again at ${wanted}, with surge protective devices off.`,
    spot: { thing: reading, property: "insulation-test-voltage" },
    value: used,
    limit: voltage,
  });
}
