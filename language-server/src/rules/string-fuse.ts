import type { PvArray, StringPath, Zone } from "../circuit/array.js";
import { label } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { type StringFuseNeed, stringFuseNeed, stringFuseWindow } from "../physics/string-fuse.js";
import { formatApart } from "../physics/working.js";
import { candidates, insertFixes, lastCut } from "./added-device.js";
import { moduleOf } from "./array-figures.js";
import { takesDevices } from "./free-ways.js";
import { type FusedString, fuseInputs, isStringFuse, judgeFuse, windowText } from "./fuse-fits.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { idsOf } from "./phrases.js";
import { type Finding, type Fix, type Outcome, rule } from "./rule.js";

const overcurrent: Source = { title: "IEC 62548-1", clause: "overcurrent protection of PV strings", basis: "read" };
const british: Source = { title: "BS 7671:2018+A4:2026", clause: "712.43, overcurrent protection", basis: "memory" };
const link: Source = { title: "IEC 60269-6", clause: "fuse-links for PV systems, gPV", basis: "memory" };

/** Whether the strings of an array need fuses, or whether the fuse of one is right. */
type FuseSubject = { readonly asks: "need"; readonly array: PvArray } | ({ readonly asks: "fit" } & FusedString);

/** Strings in parallel are fused where their neighbours could harm them, by fuses that fit. */
export const stringFuse = rule<FuseSubject>({
  id: "string-fuse",
  section: "Strings and trackers",
  severity: "error",
  title: "Strings in parallel have fuses of their own where they need them, and the fuses fit.",
  what: "Works out the current that the other strings can drive back through a faulty one and holds it against the series-fuse rating of its modules. Where it is exceeded, each string needs a fuse of its own. Every string fuse is checked: its rating inside the window of the rule set and not above the module's rating, links in both poles, category gPV, and a d.c. voltage that the coldest string does not exceed.",
  why: "A string feeds barely more than its working current, so nothing upstream notices a fault in it; but many strings in parallel can feed one faulty string until its modules and connectors burn. Only a fuse in each string ends that.",
  sources: { gb: [overcurrent, british, link], iec: [overcurrent, link] },
  examples: {
    holds: `string S1 is 10 x Hollin430
string S2 is 10 x Hollin430
string S3 is 10 x Hollin430
inverter INV is Ridge12
combiner CB is Combiner63 {
    fuse F1 is FuseLink25
    fuse F2 is FuseLink25
    fuse F3 is FuseLink25
}
run W1 from S1 to CB.F1: 12 m of Solar4
run W2 from S2 to CB.F2: 12 m of Solar4
run W3 from S3 to CB.F3: 12 m of Solar4
run W4 from CB to INV.pv1: 10 m of Solar16
`,
    breaks: `string S1 is 10 x Hollin430
string S2 is 10 x Hollin430
string S3 is 10 x Hollin430
inverter INV is Ridge12
combiner CB is Combiner63
run W1 from S1 to CB: 12 m of Solar4
run W2 from S2 to CB: 12 m of Solar4
run W3 from S3 to CB: 12 m of Solar4
run W4 from CB to INV.pv1: 10 m of Solar16
`,
  },
  subjects: fuseSubjects,
  thing: (subject) => (subject.asks === "need" ? joinedAt(subject.array) : subject.fuse),
  judge(subject, judge) {
    return subject.asks === "need" ? judgeNeed(subject.array, judge) : judgeFuse(subject, judge);
  },
});

function* fuseSubjects(zone: Zone): Generator<FuseSubject> {
  for (const array of zone.arrays) {
    if (array.strings.length > 0) yield { asks: "need", array };
    for (const [device, strings] of array.devices) {
      const [string] = strings;
      if (string && isStringFuse(device, array)) yield { asks: "fit", fuse: device, string, array };
    }
  }
}

/** What strings in parallel are known by: their tracker, or the first of them while they reach none. */
function joinedAt({ tracker, strings }: PvArray): Item {
  return tracker ?? strings[0]!.string;
}

type Unfused = { readonly path: StringPath; readonly need: StringFuseNeed };

function judgeNeed(array: PvArray, judge: Judge): Outcome | Outcome[] {
  if (array.strings.length < 2) return judge.notApplicable("no strings are in parallel here");
  const outcomes: Outcome[] = [];
  const unfused: Unfused[] = [];
  let harmless: StringFuseNeed | undefined;
  let isFused = false;
  const missing = new MissingFacts();
  for (const path of array.strings) {
    const need = missing.orElse(() => stringFuseNeed(fuseInputs(path.string, array, judge), judge.ruleSet.stringFuse));
    if (!need) continue;
    if (!need.needed) harmless = closer(harmless, need);
    else if (hasOwnFuse(path, array)) isFused = true;
    else unfused.push({ path, need });
  }
  if (unfused.length > 0) outcomes.push(withoutFuses(array, unfused as [Unfused, ...Unfused[]], judge));
  if (harmless) outcomes.push(judge.pass(harmless.reverse, harmless.bound, "no fuse is needed"));
  if (isFused) outcomes.push(judge.holds("strings that need a fuse have one of their own"));
  return [...outcomes, ...missing.outcomes()];
}

/** The need that comes closer to its bound. */
function closer(one: StringFuseNeed | undefined, other: StringFuseNeed): StringFuseNeed {
  const isCloser = !one || other.reverse.value / other.bound.value > one.reverse.value / one.bound.value;
  return isCloser ? other : one;
}

function hasOwnFuse({ steps }: StringPath, array: PvArray): boolean {
  return steps.some((step) => step.is === "item" && isStringFuse(step, array));
}

/** Fuses in scope that would fit every string without one: in the combiner that they come into, else in their last runs. */
function addedFuses(array: PvArray, unfused: readonly Unfused[], judge: Judge): Fix[] {
  const cuts = unfused.flatMap(({ path }) => lastCut(path, (run) => array.runs.get(run)?.length === 1) ?? []);
  if (cuts.length < unfused.length) return [];
  const some = candidates(judge, ["fuse"], (fuse) =>
    unfused.flatMap(({ path }) => judgeFuse({ fuse, string: path.string, array }, judge)),
  );
  const landings = unfused.flatMap(({ path }) => landingOf(path, array) ?? []);
  const boxes = new Set(landings.map(({ combiner }) => combiner));
  const [box] = boxes;
  if (!box || boxes.size > 1 || landings.length < unfused.length || !takesDevices(box)) return insertFixes(cuts, some);
  const strings = idsOf(unfused.map(({ path }) => path.string));
  return some.map(({ part, preview }) => ({
    title: `Put a fuse, ${part.name}, into ${box.id} for ${unfused.length > 1 ? "each of " : ""}${strings}`,
    preview,
    does: "nest-devices",
    thing: box,
    devices: landings.map(({ run, end }) => ({ part, landing: { run, end } })),
  }));
}

/** Where the run of one string by itself lands on the bar of a combiner: a fuse nested there takes its place. */
function landingOf({ steps }: StringPath, array: PvArray) {
  for (const [index, run] of steps.entries()) {
    const combiner = steps[index + 1];
    if (run.is !== "run" || combiner?.is !== "item" || combiner.kind !== "combiner") continue;
    const end = run.to?.item === combiner ? "to" : "from";
    const isOnBar = run[end]?.item === combiner && array.runs.get(run)?.length === 1;
    return isOnBar ? ({ run, end, combiner } as const) : undefined;
  }
  return undefined;
}

function withoutFuses(array: PvArray, unfused: readonly [Unfused, ...Unfused[]], judge: Judge): Finding {
  const [{ path, need }] = unfused;
  const { string } = path;
  const module = moduleOf(string);
  const others = array.strings.length - 1;
  const [driven, stood] = formatApart(need.reverse, need.bound);
  const shared = path.steps.find((step): step is Item => step.is === "item" && step.kind === "fuse");
  const names = idsOf(unfused.map((each) => each.path.string));
  return judge.finding({
    what: `${names} ${unfused.length > 1 ? "have no fuses" : "has no fuse"} of ${unfused.length > 1 ? "their" : "its"} own${shared ? ` (${shared.id} is shared)` : ""}: ${others > 1 ? `the ${others} other strings` : "the other string"} can drive ${driven} back through ${string.id}, and ${label(module)} stands ${stood}.`,
    why: "Nothing else would end that current before modules and connectors burn.",
    todo: windowText(stringFuseWindow(fuseInputs(string, array, judge), judge.ruleSet.stringFuse)),
    spot: { thing: string, word: "name" },
    value: need.reverse,
    limit: need.bound,
    related: [
      { spot: { thing: module, property: "max-series-fuse" }, message: `${label(module)} stands ${stood}` },
      ...unfused.slice(1).map((each) => ({ spot: { thing: each.path.string }, message: "has no fuse of its own" })),
    ],
    fixes: (asked) => addedFuses(array, unfused, asked),
  });
}
