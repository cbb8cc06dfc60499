import type { Installation } from "../circuit/installation.js";
import { fact } from "../design/facts.js";
import type { LabelWord } from "../design/schema/common.js";
import { findProperty, type Item, type Run, type Thing } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import type { Judge } from "./judge.js";
import { neededLabels } from "./label-schedule.js";
import { hasMains } from "./mains.js";
import { listed } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";

const british: readonly Source[] = [
  { title: "BS 7671:2018", clause: "514.12, 514.13, 514.15 and 712.514", basis: "memory" },
  { title: "DTI and MCS guides to PV installation", clause: "labels of the d.c. side", basis: "read" },
  { title: "PAS 63100:2024 (a specification, not a statute)", clause: "signs", basis: "read" },
];
const international: readonly Source[] = [
  {
    title: "IEC 60364-7-712, IEC 62548-1 and IEC 62446-1",
    clause: "712.514, marking, and papers on site",
    basis: "memory",
  },
];

/** A thing with the labels that it needs; for a design whose labels are not recorded yet, its site with none. */
interface Subject {
  readonly thing: Thing;
  readonly needed: readonly LabelWord[];
}

/** Where labels are recorded, none of the schedule is missing. */
export const labelMissing = rule<Subject>({
  id: "label-missing",
  section: "Earthing, grid, papers",
  severity: "warning",
  title: "Everything that needs a label carries it.",
  what: "Works out the label schedule from what is described: which label goes on the supply, boards, points of isolation, inverters, batteries, electrodes, surge protective devices and d.c. cables. Once the labels of anything are recorded, or the site is said to be as built, every row of the schedule is held against them.",
  why: "Whoever comes next, a fitter or a fire crew, sees one switch and thinks that it makes the place dead. Missing labels are among the most frequent findings of inspectors.",
  sources: { gb: british, iec: international },
  examples: {
    holds: `supply GRID { labels: [multiple-supplies, solar-and-battery-sign, circuit-diagram, shutdown-procedure] }
inverter INV is Brook4 { labels: [isolate-both-sides] }
run W1 from INV.ac to GRID: 5 m of Twin6
`,
    breaks: `supply GRID { labels: [circuit-diagram, shutdown-procedure] }
inverter INV is Brook4 { labels: [isolate-both-sides] }
run W1 from INV.ac to GRID: 5 m of Twin6
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ thing }) => thing,
  judge: ({ thing, needed }, judge) =>
    needed.length === 0
      ? judge.notApplicable("no label is recorded yet, and the site is not said to be as built")
      : judgeLabels(thing, needed, judge),
});

function* subjectsOf(installation: Installation): Generator<Subject> {
  const { design, plants } = installation;
  const { site } = design;
  if (isAsBuilt(site) || [...design.items, ...design.runs].some(statesLabels)) {
    for (const [thing, needed] of neededLabels(installation)) yield { thing, needed };
  } else if (site && plants.some(hasMains)) yield { thing: site, needed: [] };
}

/** Whether what is described is there: then what is not recorded is missing from the record. */
export function isAsBuilt(site: Thing | undefined): boolean {
  const status = site && fact(site, "status")?.value;
  return status?.kind === "word" && status.value === "as-built";
}

const memory = new WeakMap<Item | Run, boolean>();

/** Whether the labels of a thing, or of something nested in it, are recorded. Things outlive edits elsewhere. */
function statesLabels(thing: Item | Run): boolean {
  let known = memory.get(thing);
  if (known === undefined) {
    known = findProperty(thing, "labels") !== undefined || (thing.is === "item" && thing.children.some(statesLabels));
    memory.set(thing, known);
  }
  return known;
}

function judgeLabels(thing: Thing, needed: readonly LabelWord[], judge: Judge): Outcome {
  const { labels } = judge.ruleSet;
  const recorded = labelsOn(thing) ?? judge.unknown(thing, "labels");
  const missing = needed.filter((label) => !recorded.includes(label));
  if (missing.length === 0) return judge.holds(listed(needed));
  const name = "id" in thing ? thing.id : thing.name;
  return judge.finding({
    what: `${name} carries no label for ${listed(missing)}.`,
    why: "Who opens one switch has to learn there of everything that stays live.",
    todo: `Fit ${listed(missing.map((label) => `"${labels[label].text}"`))}.`,
    spot: { thing, property: "labels" },
    // Where it is built, what is fitted is a fact: only somebody who looks can say it.
    fixes: (asked) => (isAsBuilt(asked.site) ? [] : [record(thing, [...recorded, ...missing], missing)]),
  });
}

function labelsOn(thing: Thing): string[] | undefined {
  const value = fact(thing, "labels")?.value;
  if (value?.kind !== "list") return undefined;
  return value.values.flatMap((each) => (each.kind === "word" ? [each.value] : []));
}

function record(thing: Thing, all: readonly string[], missing: readonly string[]): Fix {
  const value = `[${all.join(", ")}]`;
  return {
    title: `Plan ${listed(missing)}`,
    preview: `labels: ${value}`,
    does: "set-property",
    thing,
    property: "labels",
    value,
  };
}
