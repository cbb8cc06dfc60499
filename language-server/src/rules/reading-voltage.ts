import type { Installation } from "../circuit/installation.js";
import { label } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { modulesThatFit, readingDifference } from "../physics/expected-reading.js";
import type { Derived, Figure, Given, Source } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { expectedOpenVoltage } from "./expected-string.js";
import { type Judge, NotKnown } from "./judge.js";
import { unlike, withinTolerance } from "./reading-difference.js";
import { judgeOnce, latestReadings, type ReadingSubject } from "./readings.js";
import { type Outcome, rule } from "./rule.js";

const alike: Source = { title: "IEC 62446-1", clause: "strings alike within 5 % under stable light", basis: "read" };
const british: Source = { title: "ESQCR 2002", clause: "regulation 27, 230 V +10/−6 %", basis: "memory" };
const european: Source = { title: "EN 50160", clause: "230 V ± 10 %", basis: "memory" };

interface Subject extends ReadingSubject {
  readonly property: keyof typeof judges;
}

/** A measured voltage is the one that the design gives under the conditions of the reading. */
export const readingVoltage = rule<Subject>({
  id: "reading-voltage",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "A measured voltage is what the design gives at that irradiance and temperature.",
  what: "Works out the open-circuit voltage of a string at the cell temperature that was measured, with the single-diode model where the irradiance was measured too, and compares the reading with it. Says how many modules a reading would fit that does not. A voltage read on the a.c. side is held against the highest that the supply may have. Of several readings of one thing the latest counts.",
  why: "A string that does not read as designed is not wired as designed: a module too few, one turned round, a bypass diode that failed. It is found with a meter in a minute, and by nothing else for years.",
  sources: { gb: [alike, british], iec: [alike, european] },
  examples: {
    holds: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { open-circuit-voltage: 430 V  cell-temperature: 28 degC }
`,
    breaks: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { open-circuit-voltage: 391 V  cell-temperature: 28 degC }
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ target }) => target,
  judge: (subject, judge) => {
    const work = judges[subject.property];
    return judgeOnce(work, subject, judge, () => work(subject, judge));
  },
});

const judges = { "open-circuit-voltage": judgeOpen, voltage: judgeSupply } as const;

function* subjectsOf(installation: Installation): Generator<Subject> {
  for (const property of Object.keys(judges) as Subject["property"][])
    for (const subject of latestReadings(installation, property)) yield { ...subject, property };
}

function judgeOpen(subject: ReadingSubject, judge: Judge): Outcome {
  const { reading, target } = subject;
  const [stated] = judge.need([reading, "open-circuit-voltage"]);
  const read: Given = stated.value < 0 ? { ...stated, value: -stated.value } : stated;
  const string = likeStrings(subject);
  const expected = expectedOpenVoltage(string, reading, judge);
  const difference = readingDifference(read, expected);
  const limit = judge.limit("reading-voltage-tolerance");
  const holds = withinTolerance(difference, limit, expected, judge);
  if (holds) return holds;
  const cell = judge.quantity(reading, "cell-temperature");
  const at = cell ? ` at ${formatFigure(cell)}` : "";
  return judge.finding({
    ...unlike({ target, read, expected, difference, limit, at }),
    ...fits(string, read, expected),
    why: "A string that does not read as designed is wired otherwise than designed, or damaged.",
    spot: { thing: reading, property: "open-circuit-voltage" },
    related: [
      {
        spot: { thing: string, word: "count" },
        message: `${string.id} has ${string.count} × ${label(moduleOf(string))}`,
      },
      ...judge.limitSet("reading-voltage-tolerance", "the site's own tolerance"),
    ],
  });
}

/** Strings in parallel read as one of them, if all of them are alike. Throws NotKnown. */
function likeStrings({ strings, target }: ReadingSubject): Item {
  const [first, ...others] = strings;
  if (!first) throw new NotKnown([], `no string feeds ${target.id}`);
  if (others.some((other) => other.part !== first.part || other.count !== first.count))
    throw new NotKnown([], `unlike strings feed ${target.id}: which of them was read cannot be told`);
  return first;
}

function fits(string: Item, read: Figure, expected: Derived): { readonly todo: string } {
  const check = "Count the modules, and look at polarity, bypass diodes and thermometer, before anything is closed.";
  const modules = modulesInSeries(string).value;
  const fitting = modulesThatFit(read.value, expected.value, modules);
  if (fitting === undefined) return { todo: check };
  return { todo: `It would fit ${fitting} modules in place of ${modules}, ${byModules(fitting - modules)}. ${check}` };
}

function byModules(difference: number): string {
  const count = Math.abs(difference) === 1 ? "one module" : `${Math.abs(difference)} modules`;
  return `${count} ${difference < 0 ? "short" : "too many"}`;
}

function judgeSupply({ reading, target, plant }: ReadingSubject, judge: Judge): Outcome {
  if (!plant || target.kind === "battery")
    return judge.notChecked(`${target.id} is not on the a.c. side, where a voltage is one between line and neutral`);
  const [voltage] = judge.need([reading, "voltage"]);
  const limit = judge.limit("highest-supply-voltage");
  if (voltage.value <= limit.value) return judge.pass(voltage, limit, "highest supply voltage");
  const [read, highest] = formatApart(voltage, limit);
  return judge.finding({
    what: `${target.id}: ${read} was read; ${highest} is the most that the supply may have.`,
    why: "Inverters disconnect a little above it, and feeding in only lifts it further.",
    todo: "Report it to the distributor; read it again at night, without generation.",
    spot: { thing: reading, property: "voltage" },
    value: voltage,
    limit,
    related: judge.limitSet("highest-supply-voltage", "the site's own limit"),
  });
}
