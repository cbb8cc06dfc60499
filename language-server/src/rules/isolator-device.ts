import type { PvArray } from "../circuit/array.js";
import type { Item } from "../design/things.js";
import type { Derived } from "../physics/figure.js";
import { counted } from "../physics/make.js";
import { formatApart } from "../physics/working.js";
import { highestOf, sumOfMaximumCurrents } from "./array-figures.js";
import { isolatorFixes } from "./isolator-choice.js";
import { polarity } from "./isolator-polarity.js";
import type { Judge } from "./judge.js";
import { idsOf, stated } from "./phrases.js";
import { ratedAs } from "./pole-arrangement.js";
import type { Finding, Outcome } from "./rule.js";

/** An isolator with the strings that it opens. */
export interface OpenedStrings {
  readonly device: Item;
  readonly strings: readonly Item[];
  readonly array: PvArray;
}

/** Two live conductors leave a string, and both must open. */
const conductors = counted("N", 2, "live conductors of a string");

const tested = new Set(["DC-PV1", "DC-PV2"]);

/** Everything that an isolator of an array is held against, one by one. */
export function isolatorComparisons(subject: OpenedStrings, judge: Judge): (() => Outcome | undefined)[] {
  const { device } = subject;
  // Ratings for a.c. say nothing here: one finding is enough.
  if (judge.word(device, "supply") === "ac") return [() => alternating(subject, judge), () => poles(subject, judge)];
  return [
    () => directCurrent(device, judge),
    () => category(subject, judge),
    () => poles(subject, judge),
    () => together(subject, judge),
    () => ratedVoltage(subject, judge),
    () => ratedCurrent(subject, judge),
    () => polarity(subject, judge),
    () => lockable(subject, judge),
  ];
}

type Said = Pick<Finding, "what" | "why" | "todo"> & Partial<Finding>;

function finding(subject: OpenedStrings, judge: Judge, said: Said): Finding {
  const { device } = subject;
  return judge.finding({
    spot: { thing: device, word: "part" },
    fixes: (asked) => isolatorFixes(subject, asked),
    ...said,
  });
}

function alternating(subject: OpenedStrings, judge: Judge): Outcome {
  const { device, strings } = subject;
  return finding(subject, judge, {
    what: `${device.id} is made for a.c., and opens ${idsOf(strings)}.`,
    why: "A d.c. arc does not go out at the next zero crossing: there is none.",
    todo: "Use an isolator with a DC-PV category.",
    related: [{ spot: { thing: device, property: "supply" }, message: `${device.id}, supply: ac` }],
  });
}

function directCurrent(device: Item, judge: Judge): Outcome {
  judge.needWord(device, "supply");
  return judge.holds("made for d.c.");
}

function category(subject: OpenedStrings, judge: Judge): Outcome {
  const { device } = subject;
  const word = judge.needWord(device, "utilisation-category");
  if (tested.has(word)) return judge.holds("a category tested for arrays");
  return finding(subject, judge, {
    what: `${device.id} has category ${word}; an array asks for DC-PV1 or DC-PV2.`,
    why: word.startsWith("AC")
      ? "A category for a.c. says nothing about breaking d.c."
      : "It is not tested for breaking an array's current at an array's voltage.",
    todo: "Use an isolator with a DC-PV category.",
    related: [{ spot: { thing: device, property: "utilisation-category" }, message: `${device.id}: ${word}` }],
  });
}

function poles(subject: OpenedStrings, judge: Judge): Outcome {
  const { device, strings } = subject;
  const [number] = judge.need([device, "poles"]);
  if (number.value >= conductors.value) return judge.passAtLeast(number, conductors, "live conductors");
  return finding(subject, judge, {
    what: `${device.id} opens ${number.value} of the 2 live conductors of ${idsOf(strings)}.`,
    why: "The conductor that stays joined keeps the far side live to earth.",
    todo: "Use an isolator that opens both conductors in one movement.",
    value: number,
    limit: conductors,
    related: [stated(device, "poles", number)],
  });
}

/** `poles` counts those that open together; a sheet that says they do not contradicts it. */
function together(subject: OpenedStrings, judge: Judge): Outcome | undefined {
  const { device } = subject;
  const flag = judge.flag(device, "opens-all-poles-together");
  if (flag === undefined) return undefined;
  if (flag) return judge.holds("opens all poles together");
  return finding(subject, judge, {
    what: `${device.id} does not open its poles in one movement.`,
    why: "Between the two movements one pole alone breaks the arc, at twice the voltage it is made for.",
    todo: "Use an isolator whose poles are coupled.",
    related: [{ spot: { thing: device, property: "opens-all-poles-together" }, message: `${device.id}: no` }],
  });
}

function ratedVoltage(subject: OpenedStrings, judge: Judge): Outcome {
  const { device, array } = subject;
  const at = ratedAs(device);
  const [rated] = judge.need([at, "rated-voltage"]);
  const { string, voltage } = highestOf(array, judge);
  if (voltage.value <= rated.value) return judge.pass(voltage, rated, "rated voltage");
  const [reached, stands] = formatApart(voltage, rated);
  return finding(subject, judge, {
    what: `${device.id} is rated ${stands}${arrangement(device, at)}; ${string.id} reaches ${reached} in the cold.`,
    why: "Above its rated voltage a switch may not break the arc when it is opened.",
    todo: "Wire more of its poles in series if its sheet gives a rating for that, or use one that is rated for more.",
    value: voltage,
    limit: rated,
    related: [stated(at, "rated-voltage", rated)],
  });
}

function ratedCurrent(subject: OpenedStrings, judge: Judge): Outcome {
  const { device, strings } = subject;
  const at = ratedAs(device);
  const [rated] = judge.need([at, "rated-current"]);
  const current: Derived = sumOfMaximumCurrents(strings, judge);
  if (current.value <= rated.value) return judge.pass(current, rated, "rated current");
  const [reached, stands] = formatApart(current, rated);
  return finding(subject, judge, {
    what: `${device.id} is rated ${stands}${arrangement(device, at)}; ${idsOf(strings)} may give ${reached}.`,
    why: "Above its rated current a switch overheats when closed and may not break the arc when it is opened.",
    todo: "Use an isolator that is rated for more, or one for each string.",
    value: current,
    limit: rated,
    related: [stated(at, "rated-current", rated)],
  });
}

function arrangement(device: Item, at: Item): string {
  return at === device ? "" : ` wired as ${at.name}`;
}

function lockable(subject: OpenedStrings, judge: Judge): Outcome {
  const { device } = subject;
  if (judge.needFlag(device, "lockable")) return judge.holds("can be locked open");
  return finding(subject, judge, {
    severity: "warning",
    what: `${device.id} cannot be locked open.`,
    why: "Whoever works behind it relies on nobody switching it on again.",
    todo: "Use one that takes a padlock, or say in a departure how it is secured.",
    related: [{ spot: { thing: device, property: "lockable" }, message: `${device.id}, lockable: no` }],
  });
}
