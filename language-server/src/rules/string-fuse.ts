import type { PvArray, StringPath, Zone } from "../circuit/array.js";
import { label } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { stringFuseNeed, stringFuseWindow } from "../physics/string-fuse.js";
import { formatApart } from "../physics/working.js";
import { moduleOf } from "./array-figures.js";
import { type FusedString, fuseInputs, isStringFuse, judgeFuse, windowText } from "./fuse-fits.js";
import type { Judge } from "./judge.js";
import { type Finding, type Outcome, rule } from "./rule.js";

const overcurrent: Source = { title: "IEC 62548-1", clause: "overcurrent protection of PV strings", basis: "read" };
const british: Source = { title: "BS 7671:2018+A4:2026", clause: "712.43, overcurrent protection", basis: "memory" };
const link: Source = { title: "IEC 60269-6", clause: "fuse-links for PV systems, gPV", basis: "memory" };

/** Whether a string needs a fuse, or whether the fuse of one is right. */
type FuseSubject =
  | { readonly asks: "need"; readonly path: StringPath; readonly array: PvArray }
  | ({ readonly asks: "fit" } & FusedString);

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
  thing: (subject) => (subject.asks === "need" ? subject.path.string : subject.fuse),
  judge(subject, judge) {
    return subject.asks === "need" ? judgeNeed(subject.path, subject.array, judge) : judgeFuse(subject, judge);
  },
});

function* fuseSubjects(zone: Zone): Generator<FuseSubject> {
  for (const array of zone.arrays) {
    for (const path of array.strings) yield { asks: "need", path, array };
    for (const [device, strings] of array.devices) {
      const [string] = strings;
      if (string && isStringFuse(device, array)) yield { asks: "fit", fuse: device, string, array };
    }
  }
}

function judgeNeed(path: StringPath, array: PvArray, judge: Judge): Outcome {
  const { string } = path;
  if (array.strings.length < 2) return judge.notApplicable("no other string is in parallel with it");
  const need = stringFuseNeed(fuseInputs(string, array, judge), judge.ruleSet.stringFuse);
  if (!need.needed) return judge.pass(need.reverse, need.bound, "no fuse is needed");
  if (path.steps.some((step) => step.is === "item" && isStringFuse(step, array)))
    return judge.holds("the string has a fuse of its own");
  return missing(path, array, need, judge);
}

function missing(
  { string, steps }: StringPath,
  array: PvArray,
  need: ReturnType<typeof stringFuseNeed>,
  judge: Judge,
): Finding {
  const module = moduleOf(string);
  const others = array.strings.length - 1;
  const [driven, stood] = formatApart(need.reverse, need.bound);
  const window = stringFuseWindow(fuseInputs(string, array, judge), judge.ruleSet.stringFuse);
  const shared = steps.find((step): step is Item => step.is === "item" && step.kind === "fuse");
  return judge.finding({
    what: `${string.id} has no fuse of its own${shared ? ` (${shared.id} is shared)` : ""}: ${others === 1 ? "the other string" : `the ${others} other strings`} can drive ${driven} back through it, and ${label(module)} stands ${stood}.`,
    why: "Nothing else would end that current before modules and connectors burn.",
    todo: windowText(window),
    spot: { thing: string, word: "name" },
    value: need.reverse,
    limit: need.bound,
    related: [{ spot: { thing: module, property: "max-series-fuse" }, message: `${label(module)} stands ${stood}` }],
  });
}
