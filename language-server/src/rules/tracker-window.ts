import { label } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import type { Derived, Figure, Given, Source } from "../physics/figure.js";
import { largestCount, smallestCount } from "../physics/string-length.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf } from "./array-figures.js";
import { freeTrackerFixes } from "./free-tracker.js";
import { type Judge, NotKnown } from "./judge.js";
import { coldOperatingVoltage, hotOperatingVoltage, operatingModule } from "./operating-voltage.js";
import { type Finding, type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { type StringSubject, stringOf, stringsOf } from "./strings-of.js";
import { mostModules } from "./voltage-limits.js";

const operation: Source = {
  title: "IEC 62548-1",
  clause: "operating voltage of the array within the tracking range of the inverter",
  basis: "memory",
};
const habit: Source = { title: "string kept within the tracker's window from coldest to hottest", basis: "practice" };

/** A string works inside the voltage window of its tracker, hot and cold. */
export const trackerWindow = rule<StringSubject>({
  id: "tracker-window",
  section: "Strings and trackers",
  severity: "warning",
  title: "A string works within its tracker's voltage window on the hottest and on the coldest day.",
  what: "Works out the voltage at maximum power with the hottest cells (the site's highest temperature and the rise that the mounting causes) and at the lowest temperature, and holds both against the window of the tracker; the hot one against its start voltage too. The module's own coefficient of that voltage is used where its sheet prints one, else power less current coefficient. It is an error where the window is not reached even on the coldest day.",
  why: "Below its window a tracker cannot find the maximum power point or does not start; above it, it works beside that point. Neither breaks anything: yield is lost, in heat just when the sun is strongest.",
  sources: { gb: [operation, habit], iec: [operation, habit] },
  examples: {
    holds: `string S1 is 4 x Hollin430 { mounting: on-roof }
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
    breaks: `string S1 is 3 x Hollin430 { mounting: on-roof }
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`,
  },
  subjects: stringsOf,
  thing: stringOf,
  judge(subject, judge) {
    const { string } = subject.path;
    const { tracker } = subject.array;
    if (!tracker) return judge.notApplicable("the string is wired to no tracker");
    const module = moduleOf(string);
    // What both comparisons need is asked for first, so that it is named once.
    judge.needRange(tracker, "voltage-range");

    operatingModule(module, judge);
    return eachOf(
      () => judgeHot(subject, tracker, module, judge),
      () => judgeCold(subject, tracker, module, judge),
    );
  },
});

interface Bound {
  readonly figure: Given;
  readonly property: "voltage-range" | "start-voltage";
}

/** What a string has to reach: the window, and the start voltage where it is known. */
function lowerBounds(tracker: Item, judge: Judge): Bound[] {
  const start = judge.quantity(tracker, "start-voltage");
  const bounds: Bound[] = [{ figure: judge.needRange(tracker, "voltage-range").low, property: "voltage-range" }];
  return start ? [...bounds, { figure: start, property: "start-voltage" }] : bounds;
}

/** The one that is harder to reach. */
function highest(bounds: readonly Bound[]): Bound {
  return bounds.reduce((found, bound) => (bound.figure.value > found.figure.value ? bound : found));
}

function judgeHot(subject: StringSubject, tracker: Item, module: Part, judge: Judge): Outcome[] {
  const bounds = lowerBounds(tracker, judge);
  const hot = hotOperatingVoltage(subject.path.string, module, judge);
  const missed = bounds.filter(({ figure }) => hot.value < figure.value);
  const outcomes: Outcome[] = bounds
    .filter((bound) => !missed.includes(bound))
    .map(({ figure, property }) =>
      judge.passAtLeast(hot, figure, property === "start-voltage" ? property : "bottom of the voltage-range"),
    );
  if (missed.length > 0) outcomes.push(tooLow(subject, tracker, module, hot, highest(missed), judge));
  if (!bounds.some(({ property }) => property === "start-voltage"))
    outcomes.push({ outcome: "not-checked", missing: [{ thing: tracker, property: "start-voltage" }] });
  return outcomes;
}

function tooLow(
  subject: StringSubject,
  tracker: Item,
  module: Part,
  hot: Derived,
  { figure: bound, property }: Bound,
  judge: Judge,
): Finding {
  const { string } = subject.path;
  const [works, wanted] = formatApart(hot, bound);
  const cells = hot.terms.find(({ symbol }) => symbol === "Tmax");
  const never = isNeverReached(string, module, bound, judge);
  const least = smallestCount(bound, hotOperatingVoltage(string, module, judge, 1)).value;
  return judge.finding({
    severity: never ? "error" : "warning",
    what: `${string.id}: ${string.count} × ${label(module)} work at ${works} with cells at ${cells ? formatFigure(cells) : "their hottest"}; ${tracker.id} needs ${wanted}${property === "start-voltage" ? " to start" : ""}.${never ? " The string does not reach that on the coldest day either." : ""}`,
    why: never ? "It would never feed anything." : "Its yield is lost just when the sun is strongest.",
    todo: `Fit at least ${least} in series, or use a tracker that works lower.`,
    spot: { thing: string, word: "count" },
    value: hot,
    limit: bound,
    related: [{ spot: { thing: tracker, property }, message: `${tracker.id} needs ${wanted}` }],
    fixes: (asked) => [...countFixes(subject, tracker, module, asked), ...trackerFixes(subject, module, asked)],
  });
}

function isNeverReached(string: Item, module: Part, bound: Figure, judge: Judge): boolean {
  try {
    return coldOperatingVoltage(string, module, judge).value < bound.value;
  } catch (error) {
    if (error instanceof NotKnown) return false;
    throw error;
  }
}

function judgeCold(subject: StringSubject, tracker: Item, module: Part, judge: Judge): Outcome {
  const { string } = subject.path;
  const { high } = judge.needRange(tracker, "voltage-range");
  const cold = coldOperatingVoltage(string, module, judge);
  if (cold.value <= high.value) return judge.pass(cold, high, "top of the voltage-range");
  const [works, upTo] = formatApart(cold, high);
  const most = largestCount(high, coldOperatingVoltage(string, module, judge, 1)).value;
  const lowest = judge.needSite("lowest-temperature");
  return judge.finding({
    what: `${string.id}: ${string.count} × ${label(module)} would work at ${works} at ${formatFigure(lowest)}; ${tracker.id} tracks up to ${upTo}.`,
    why: "Above its window a tracker works beside the maximum power point and yield is lost on cold, bright days.",
    todo:
      most > 0
        ? `Fit at most ${most} in series, or use a tracker that works higher.`
        : "Use a tracker that works higher.",
    spot: { thing: string, word: "count" },
    value: cold,
    limit: high,
    related: [{ spot: { thing: tracker, property: "voltage-range" }, message: `${tracker.id} tracks up to ${upTo}` }],
    fixes: (asked) => [...countFixes(subject, tracker, module, asked), ...trackerFixes(subject, module, asked)],
  });
}

interface Swing {
  readonly hot: Derived;
  readonly cold: Derived;
}

function swing(string: Item, module: Part, judge: Judge, count = string.count): Swing | undefined {
  try {
    return {
      hot: hotOperatingVoltage(string, module, judge, count),
      cold: coldOperatingVoltage(string, module, judge, count),
    };
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

/** The nearest count at which the string works inside the window and every voltage limit holds. */
function countFixes({ path, array }: StringSubject, tracker: Item, module: Part, judge: Judge): Fix[] {
  const { string } = path;
  const one = swing(string, module, judge, 1);
  if (!one) return [];
  const { figure: bound } = highest(lowerBounds(tracker, judge));
  const { high } = judge.needRange(tracker, "voltage-range");
  const least = smallestCount(bound, one.hot).value;
  const window = largestCount(high, one.cold).value;
  const most = Math.min(window, mostModules(path, array, judge) ?? window);
  if (least > most || most < 1) return [];
  const count = string.count < least ? least : most;
  if (count === string.count) return [];
  const after = swing(string, module, judge, count);
  return [
    {
      title: `Set ${string.id} to ${count} x ${module.name}`,
      preview: `${count} modules: ${after ? inWindow(after, bound, high) : ""}; ${least} to ${most} fit`,
      does: "set-count",
      thing: string,
      count,
    },
  ];
}

/** Another tracker of the inverter that is free and whose window holds the string. */
function trackerFixes({ path, array, zone }: StringSubject, module: Part, judge: Judge): Fix[] {
  const now = swing(path.string, module, judge);
  // Strings in parallel move together; what then holds for this one may not for the next.
  if (!now || array.strings.length > 1) return [];
  return freeTrackerFixes(array.landing, array, zone, (tracker) => {
    if (!judge.range(tracker, "voltage-range")) return undefined;
    const { figure: bound } = highest(lowerBounds(tracker, judge));
    const { high } = judge.needRange(tracker, "voltage-range");
    return now.hot.value >= bound.value && now.cold.value <= high.value ? inWindow(now, bound, high) : undefined;
  });
}

function inWindow({ hot, cold }: Swing, low: Figure, high: Figure): string {
  return `${formatFigure(hot)} to ${formatFigure(cold)} in ${formatFigure(low)} to ${formatFigure(high)}`;
}
