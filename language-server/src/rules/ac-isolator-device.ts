import { polesOf, type System } from "../circuit/poles.js";
import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { designCurrent } from "../physics/ac-current.js";
import type { Figure } from "../physics/figure.js";
import { counted } from "../physics/make.js";
import { formatApart, formatFigure } from "../physics/working.js";
import type { FeedingUnit } from "./ac-units.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { idsOf, stated } from "./phrases.js";
import { unitCurrents } from "./port-currents.js";
import type { Finding, Fix, Outcome } from "./rule.js";

/** Everything that a device is held against which is to isolate an inverter from the a.c. side. */
export function comparisonsOf(
  device: Item,
  unit: FeedingUnit,
  judge: Judge,
): (() => Outcome | readonly Outcome[] | undefined)[] {
  return [
    () => alternating(device, unit, judge),
    () => poles(device, unit, judge),
    () => together(device, unit, judge),
    () => marked(device, unit, judge),
    () => lockable(device, unit, judge),
    () => ratedCurrent(device, unit, judge),
  ];
}

type Said = Pick<Finding, "what" | "why" | "todo"> & Partial<Finding>;

function finding(device: Item, unit: FeedingUnit, judge: Judge, said: Said): Finding {
  return judge.finding({
    spot: { thing: device, word: "part" },
    fixes: (asked) => isolatorFixes(device, unit, asked),
    ...said,
  });
}

/** RCDs, RCBOs and changeovers are for a.c. by what they are. */
function alternating(device: Item, unit: FeedingUnit, judge: Judge): Outcome | undefined {
  if (device.kind !== "isolator" && device.kind !== "breaker" && device.kind !== "fuse") return undefined;
  if (judge.needWord(device, "supply") === "ac") return judge.holds(`${device.id} is made for a.c.`);
  return finding(device, unit, judge, {
    what: `${device.id} is rated for d.c. only, and isolates ${unit.item.id}.`,
    why: "What its sheet says of voltage and current holds for another kind of circuit.",
    todo: "Use an isolator that is rated for a.c.",
    related: [{ spot: { thing: device, property: "supply" }, message: `${device.id}, supply: dc` }],
  });
}

function systemOf({ item }: FeedingUnit): System {
  return given(item, "phases")?.value === 3 ? "ac-three-phase" : "ac";
}

function poles(device: Item, unit: FeedingUnit, judge: Judge): Outcome {
  // The carrier of a fuse is only declared as a means of isolation where it opens every live conductor.
  if (device.kind === "fuse") return judge.holds(`the carrier of ${device.id} is drawn out`);
  judge.need([device, "poles"], [unit.item, "phases"]);
  const { opened = 0, needed } = polesOf(device, systemOf(unit));
  const opens = counted("N", opened, device.id);
  const live = counted("Nlive", needed, `live conductors of ${unit.item.id}`);
  if (opened >= needed) return judge.passAtLeast(opens, live, `${device.id}, live conductors`);
  return finding(device, unit, judge, {
    what: `${device.id} opens ${opened} of the ${needed} live conductors of ${unit.item.id}.`,
    why: "The one that stays joined, the neutral included, may be live from the other side.",
    todo: "Use an isolator that opens every live conductor with its neutral.",
    value: opens,
    limit: live,
    related: [{ spot: { thing: device, property: "poles" }, message: `${device.id}, poles` }],
  });
}

function together(device: Item, unit: FeedingUnit, judge: Judge): Outcome | undefined {
  if (judge.flag(device, "opens-all-poles-together") !== false) return undefined;
  return finding(device, unit, judge, {
    what: `${device.id} does not open its poles in one movement.`,
    why: "Between the movements one conductor is live and the other is not, and one may be forgotten.",
    todo: "Use an isolator whose poles are coupled.",
    related: [{ spot: { thing: device, property: "opens-all-poles-together" }, message: `${device.id}: no` }],
  });
}

function marked(device: Item, unit: FeedingUnit, judge: Judge): Outcome | undefined {
  if (judge.flag(device, "suitable-for-isolation") !== false) return undefined;
  return finding(device, unit, judge, {
    what: `${device.id} is not marked as suitable for isolation.`,
    why: "Its open contacts are not proven to keep a surge or a leak from the person behind them.",
    todo: "Use an isolator, or a device that its maker marks for isolation.",
    related: [{ spot: { thing: device, property: "suitable-for-isolation" }, message: `${device.id}: no` }],
  });
}

function lockable(device: Item, unit: FeedingUnit, judge: Judge): Outcome {
  if (judge.needFlag(device, "lockable")) return judge.holds(`${device.id} can be locked open`);
  return finding(device, unit, judge, {
    what: `${device.id} cannot be locked open, and is what isolates ${unit.item.id}.`,
    why: "Whoever works at the inverter relies on nobody switching it on again.",
    todo: "Use one that takes a padlock.",
    related: [{ spot: { thing: device, property: "lockable" }, message: `${device.id}, lockable: no` }],
  });
}

/** Breakers and RCBOs are held against the currents by the rule about protection. */
function ratedCurrent(device: Item, unit: FeedingUnit, judge: Judge): Outcome[] | undefined {
  if (device.kind !== "isolator" && device.kind !== "changeover") return undefined;
  const [rated] = judge.need([device, "rated-current"]);
  const { current, unknown } = currentOf(unit, judge);
  if (!current) return [...unknown];
  if (current.value <= rated.value) return [judge.pass(current, rated, `${device.id}, current`), ...unknown];
  const [flows, stands] = formatApart(current, rated);
  return [
    finding(device, unit, judge, {
      what: `${device.id} is rated ${stands}; ${unit.item.id} sends or draws ${flows}.`,
      why: "Above its rated current a switch overheats.",
      todo: "Use an isolator that is rated for more.",
      value: current,
      limit: rated,
      related: [stated(device, "rated-current", rated)],
    }),
  ];
}

function currentOf(
  { terminal, tree }: FeedingUnit,
  judge: Judge,
): { readonly current?: Figure; readonly unknown: readonly Outcome[] } {
  if (!terminal || !tree) return { unknown: [] };
  const { currents, unknown } = unitCurrents([terminal], tree, judge);
  return { current: designCurrent(currents)?.current, unknown };
}

/** Whether one of the devices that are fit can be reached from the unit. */
export function withinReach(
  devices: readonly Item[],
  unit: FeedingUnit,
  judge: Judge,
  fixes: (asked: Judge) => readonly Fix[],
): Outcome {
  const [nearest] = devices;
  const near = devices.find((device) => judge.flag(device, "within-reach"));
  if (near) return judge.holds(`${near.id} is within reach`);
  const unsaid = devices.find((device) => judge.flag(device, "within-reach") === undefined);
  if (unsaid || !nearest) return judge.unknown(unsaid ?? unit.thing, "within-reach");
  return judge.finding({
    severity: "warning",
    what: `${idsOf(devices)} cannot be reached from ${unit.thing.id}.`,
    why: "Somebody who works at the inverter does not see who switches it on again.",
    todo: "Put an isolator where it can be reached from the inverter.",
    spot: { thing: nearest, property: "within-reach" },
    related: [{ spot: { thing: nearest, property: "within-reach" }, message: `${nearest.id}, within-reach: no` }],
    fixes,
  });
}

const deciding = [
  "supply",
  "poles",
  "switched-neutral",
  "rated-current",
  "lockable",
  "opens-all-poles-together",
  "suitable-for-isolation",
];

/** Other isolators in scope that hold in every respect. */
function isolatorFixes(device: Item, unit: FeedingUnit, judge: Judge): readonly Fix[] {
  const { current, unknown } = currentOf(unit, judge);
  if (device.kind !== "isolator" || !current || unknown.length > 0) return [];
  const needed = systemOf(unit) === "ac-three-phase" ? 4 : 2;
  return partFixes(judge, {
    thing: device,
    properties: deciding,
    preview: (part) => {
      const rated = given(part, "rated-current");
      if (!rated || rated.value < current.value || !isFit(part, needed)) return undefined;
      return `${formatFigure(rated)}, ${percent(current.value / rated.value)}`;
    },
    order: (part) => given(part, "rated-current")?.value ?? 0,
  });
}

function isFit(part: Part, needed: number): boolean {
  const number = given(part, "poles")?.value ?? 0;
  const opened = number + (flagOf(part, "switched-neutral") === true && (number === 1 || number === 3) ? 1 : 0);
  return (
    wordOf(part, "supply") === "ac" &&
    opened >= needed &&
    flagOf(part, "lockable") === true &&
    flagOf(part, "opens-all-poles-together") !== false &&
    flagOf(part, "suitable-for-isolation") !== false
  );
}
