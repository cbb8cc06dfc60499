import type { PvArray } from "../circuit/array.js";
import { label } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { planeAngle } from "../physics/plane-angle.js";
import { standardMaxPowerVoltage } from "../physics/string-voltage.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import type { Judge } from "./judge.js";
import { sameAsFixes, separateTracker } from "./parallel-fixes.js";
import { type ParallelString, parallelStringsOf } from "./parallel-strings.js";
import { type Finding, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

const parallel: Source = {
  title: "IEC 62548-1",
  clause: "strings in parallel of the same technology and number of modules",
  basis: "memory",
};
const planes: Source = { title: "strings of one tracker in one plane", basis: "practice" };

/** Strings that share a tracker are alike. */
export const parallelMismatch = rule<ParallelString>({
  id: "parallel-mismatch",
  section: "Strings and trackers",
  severity: "error",
  title: "Strings in parallel have as many modules, of the same part, in the same plane.",
  what: "Compares the strings that are joined in parallel: number of modules, part, and the angle between their planes (from tilt and azimuth). Each string is held against the kind that most of them are. Another number or part is an error; another plane is a warning.",
  why: "Strings in parallel have one voltage. The one that is made for a lower voltage is driven above its maximum power point or even takes current back from the others; strings that face elsewhere only lose some yield.",
  sources: { gb: [parallel, planes], iec: [parallel, planes] },
  examples: {
    holds: `string S1 is 8 x Hollin430 { tilt: 35 deg  azimuth: 180 deg }
string S2 is 8 x Hollin430 { tilt: 35 deg  azimuth: 180 deg }
inverter INV is Ridge12
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 11 x Hollin430 { tilt: 35 deg  azimuth: 90 deg }
string S2 is 6 x Hollin430 { tilt: 35 deg  azimuth: 270 deg }
inverter INV is Ridge12
run W1 from S1 to INV.pv1: 12 m of Solar4
run W2 from S2 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: parallelStringsOf,
  thing: ({ path }) => path.string,
  judge(subject, judge) {
    const { path, model } = subject;
    if (!model) return judge.notApplicable("no other string is in parallel with it");
    moduleOf(path.string);
    modulesInSeries(path.string);
    if (path.string === model) return judge.holds("the strings in parallel with it are held against this one");
    return eachOf(
      () => judgeKind(subject, model, judge),
      () => judgePlane(subject, model, judge),
    );
  },
});

function judgeKind(subject: ParallelString, model: Item, judge: Judge): Outcome {
  const { string } = subject.path;
  const module = moduleOf(string);
  const other = moduleOf(model);
  if (module !== other) return otherModule(subject, model, judge);
  if (string.count !== model.count) return otherCount(subject, model, judge);
  return judge.holds("as many modules of the same part as the strings in parallel with it");
}

function otherCount(subject: ParallelString, model: Item, judge: Judge): Finding {
  const { path, array } = subject;
  const { string } = path;
  return judge.finding({
    what: `${string.id} has ${string.count} modules and ${model.id} ${model.count}, in parallel${on(array)}${voltages(string, model, judge)}.`,
    why: "One tracker works both at one voltage: the shorter string is driven above its own and may take current back.",
    todo: "Wire them to trackers of their own, or make them alike.",
    spot: { thing: string, word: "count" },
    value: modulesInSeries(string),
    related: [{ spot: { thing: model, word: "count" }, message: `${model.id} has ${model.count} modules` }],
    fixes: (asked) => [...separateTracker(subject), ...sameAsFixes(subject, model, asked)],
  });
}

/** " on INV.pv1"; nothing where the strings reach no tracker yet. */
function on({ tracker }: PvArray): string {
  return tracker ? ` on ${tracker.id}` : "";
}

/** ": 358.6 V and 195.6 V at maximum power"; nothing where the sheet does not say. */
function voltages(string: Item, model: Item, judge: Judge): string {
  const voltage = judge.quantity(moduleOf(string), "voltage-at-max-power");
  if (!voltage) return "";
  const [own, others] = [string, model].map((each) =>
    formatFigure(standardMaxPowerVoltage({ modules: modulesInSeries(each), voltage })),
  );
  return `: ${own} and ${others} at maximum power`;
}

function otherModule(subject: ParallelString, model: Item, judge: Judge): Finding {
  const { path, array } = subject;
  const { string } = path;
  return judge.finding({
    what: `${string.id} is made of ${label(moduleOf(string))} and ${model.id} of ${label(moduleOf(model))}, in parallel${on(array)}.`,
    why: "Modules of two kinds have their maximum power at different voltages; one tracker cannot work both there.",
    todo: "Wire them to trackers of their own, or make both of the same module.",
    spot: { thing: string, word: "part" },
    related: [{ spot: { thing: model, word: "part" }, message: `${model.id} is made of ${label(moduleOf(model))}` }],
    fixes: (asked) => [...separateTracker(subject), ...sameAsFixes(subject, model, asked)],
  });
}

function judgePlane(subject: ParallelString, model: Item, judge: Judge): Outcome {
  const { path, array } = subject;
  const { string } = path;
  const [tilt, azimuth, modelTilt, modelAzimuth] = judge.need(
    [string, "tilt"],
    [string, "azimuth"],
    [model, "tilt"],
    [model, "azimuth"],
  );
  const limit = judge.limit("parallel-plane-difference");
  const apart = planeAngle({ tilt, azimuth }, { tilt: modelTilt, azimuth: modelAzimuth });
  if (apart.value <= limit.value) return judge.pass(apart, limit, model.id);
  const [angle, allowed] = formatApart(apart, limit);
  return judge.finding({
    severity: "warning",
    what: `${string.id} and ${model.id}, in parallel${on(array)}, face ${angle} apart; up to ${allowed} counts as one plane.`,
    why: "They have their maximum power at different hours, and what the tracker finds between them is less than both could give.",
    todo: "Wire them to trackers of their own, or write down why the loss is accepted.",
    spot: { thing: string, property: "azimuth" },
    value: apart,
    limit,
    related: [
      { spot: { thing: model, property: "azimuth" }, message: `the plane of ${model.id}` },
      ...judge.limitSet("parallel-plane-difference", "the site's own limit"),
    ],
    fixes: () => separateTracker(subject),
  });
}
