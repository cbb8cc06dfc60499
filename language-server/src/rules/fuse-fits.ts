import type { PvArray } from "../circuit/array.js";
import { given, label, wordOf } from "../design/facts.js";
import { type Item, isWrittenHere, type Part } from "../design/things.js";
import { counted } from "../physics/make.js";
import { fuseFits, type StringFuseInputs, type StringFuseWindow, stringFuseWindow } from "../physics/string-fuse.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, stringColdVoltage, stringMaximumCurrent } from "./array-figures.js";
import type { Judge } from "./judge.js";
import { partFixes } from "./part-fixes.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";

/** Whether a string's fuse is right: rating, poles, category, voltage. */

export interface FusedString {
  readonly fuse: Item;
  readonly string: Item;
  readonly array: PvArray;
}

/** A fuse that carries one string only. Where several are joined before it, it is a fuse of the group. */
export function isStringFuse(device: Item, array: PvArray): boolean {
  return device.kind === "fuse" && array.devices.get(device)?.length === 1;
}

export function fuseInputs(string: Item, array: PvArray, judge: Judge): StringFuseInputs {
  const module = moduleOf(string);
  const [shortCircuitCurrent, moduleFuseRating] = judge.need(
    [module, "short-circuit-current"],
    [module, "max-series-fuse"],
  );
  return {
    stringsInParallel: counted("Np", array.strings.length, "strings in parallel"),
    shortCircuitCurrent,
    maximumShortCircuitCurrent: stringMaximumCurrent(string, judge),
    moduleFuseRating,
  };
}

export function judgeFuse(subject: FusedString, judge: Judge): Outcome[] {
  return eachOf(
    () => judgeRating(subject, judge),
    () => judgePoles(subject, judge),
    () => judgeCategory(subject, judge),
    () => judgeVoltage(subject, judge),
  );
}

function windowOf({ string, array }: FusedString, judge: Judge): StringFuseWindow {
  return stringFuseWindow(fuseInputs(string, array, judge), judge.ruleSet.stringFuse);
}

function judgeRating(subject: FusedString, judge: Judge): Outcome {
  const { fuse, string } = subject;
  const window = windowOf(subject, judge);
  const [rating] = judge.need([fuse, "rated-current"]);
  if (fuseFits(rating.value, window)) return judge.pass(rating, window.highest, "rated-current");
  const isLow = rating.value <= window.highest.value;
  const bound = isLow ? window.lowest : window.highest;
  const [rated, wanted] = formatApart(rating, bound);
  const module = moduleOf(string);
  return judge.finding({
    what: `${fuse.id} is rated ${rated}; the fuse of ${string.id} has to be ${isLow ? "above" : "at most"} ${wanted}.`,
    why: isLow
      ? "A link so close to the string's own current tires and opens on bright days."
      : `A fault could feed the modules more than they stand (${label(module)}).`,
    todo: windowText(window),
    spot: { thing: fuse, word: "part" },
    value: rating,
    limit: bound,
    related: [
      { spot: { thing: fuse, property: "rated-current" }, message: `${fuse.id} is rated ${rated}` },
      {
        spot: { thing: module, property: isLow ? "short-circuit-current" : "max-series-fuse" },
        message: boundText(module, isLow),
      },
    ],
    fixes: (asked) => fittingParts(subject, asked),
  });
}

function boundText(module: Part, isLow: boolean): string {
  return isLow ? `the window follows from Isc of ${label(module)}` : `${label(module)} stands no larger fuse`;
}

/** What to fit; a module of a high current and a low fuse rating can leave no window at all. */
export function windowText({ lowest, highest }: StringFuseWindow): string {
  if (lowest.value > highest.value)
    return "No rating fits these modules: put fewer strings in parallel, without fuses.";
  return `Fit gPV links of ${formatFigure(lowest)} to ${formatFigure(highest)} in both poles.`;
}

function judgePoles(subject: FusedString, judge: Judge): Outcome {
  const { fuse } = subject;
  const poles = judge.needWord(fuse, "fused-poles");
  if (poles === "both") return judge.holds("a fuse-link in both poles");
  return judge.finding({
    what: `${fuse.id} has a link in the ${poles} conductor only; both conductors of ${subject.string.id} need one.`,
    why: "An array floats: after a first earth fault the current returns by the conductor that has no link.",
    todo: "Fit a link in both poles.",
    spot: statedOn(fuse, "fused-poles") ? { thing: fuse, property: "fused-poles" } : { thing: fuse, word: "part" },
    fixes: () =>
      isWrittenHere(fuse)
        ? [
            {
              title: `Fuse both poles at ${fuse.id}`,
              preview: "both poles",
              does: "set-property",
              thing: fuse,
              property: "fused-poles",
              value: "both",
            },
          ]
        : [],
  });
}

function statedOn(fuse: Item, property: string): boolean {
  return isWrittenHere(fuse) && fuse.declaration.properties.some(({ name }) => name === property);
}

function judgeCategory(subject: FusedString, judge: Judge): Outcome {
  const { fuse } = subject;
  const category = judge.needWord(fuse, "category");
  if (category === "gPV") return judge.holds("gPV, the category made for strings");
  return judge.finding({
    what: `${fuse.id} is ${category}; the fuse of a string has to be gPV.`,
    why: "Other links are not made to break the small direct overcurrents of an array, and may burn on instead.",
    todo: "Fit a gPV link.",
    spot: { thing: fuse, word: "part" },
    related: [{ spot: { thing: fuse, property: "category" }, message: `${fuse.id} is ${category}` }],
    fixes: (asked) => fittingParts(subject, asked),
  });
}

function judgeVoltage(subject: FusedString, judge: Judge): Outcome {
  const { fuse, string } = subject;
  const voltage = stringColdVoltage(string, judge);
  const [rated] = judge.need([fuse, "rated-voltage"]);
  if (voltage.value <= rated.value) return judge.pass(voltage, rated, "rated-voltage");
  const [reached, stands] = formatApart(voltage, rated);
  return judge.finding({
    what: `${fuse.id} is rated ${stands} d.c.; ${string.id} reaches ${reached}.`,
    why: "Above its rated voltage a link may not end the arc when it melts.",
    todo: "Fit a link for a higher d.c. voltage.",
    spot: { thing: fuse, word: "part" },
    value: voltage,
    limit: rated,
    related: [{ spot: { thing: fuse, property: "rated-voltage" }, message: `${fuse.id} is rated ${stands}` }],
    fixes: (asked) => fittingParts(subject, asked),
  });
}

/** Fuse parts in scope that are right in every respect, the smallest rating first. */
function fittingParts(subject: FusedString, judge: Judge): Fix[] {
  const window = windowOf(subject, judge);
  const voltage = stringColdVoltage(subject.string, judge);
  const preview = (part: Part): string | undefined => {
    const rating = given(part, "rated-current");
    const rated = given(part, "rated-voltage");
    if (!rating || !rated || wordOf(part, "category") !== "gPV") return undefined;
    if (!fuseFits(rating.value, window) || rated.value < voltage.value) return undefined;
    return `${formatFigure(rating)} where ${formatFigure(window.lowest)} to ${formatFigure(window.highest)} fit`;
  };
  return partFixes(judge, {
    thing: subject.fuse,
    properties: ["rated-current", "rated-voltage", "category"],
    preview,
    order: (part) => given(part, "rated-current")?.value ?? 0,
  });
}
