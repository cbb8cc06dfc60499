import { isProtective } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import type { Item, Thing } from "../design/things.js";
import type { Figure, Given } from "../physics/figure.js";
import { formatApart } from "../physics/working.js";
import { type Judge, NotKnown } from "./judge.js";
import { electrodeLimit, residualDevices } from "./own-electrode.js";
import { stated } from "./phrases.js";
import type { ReadingSubject } from "./readings.js";
import type { Outcome, Related } from "./rule.js";

/** What is read beside the loop impedance: fault currents, RCD trip times, electrodes. */

interface Bound {
  readonly limit: Figure;
  readonly against: string;
  readonly why: string;
  readonly todo: string;
  readonly related: readonly Related[];
}

function atMost(subject: ReadingSubject, property: string, read: Given, bound: Bound, judge: Judge): Outcome {
  const { limit, against, why, todo, related } = bound;
  if (read.value <= limit.value) return judge.pass(read, limit, against);
  const [has, allows] = formatApart(read, limit);
  return judge.finding({
    what: `${subject.target.id}: ${has} was read; ${allows} is the most (${against}).`,
    why,
    todo,
    spot: { thing: subject.reading, property },
    value: read,
    limit,
    related,
  });
}

/** A prospective fault current against what the survey says, or against what a device breaks. */
export function judgeFaultCurrent(subject: ReadingSubject, judge: Judge): Outcome {
  const { target, plant } = subject;
  const [read] = judge.need([subject.reading, "fault-current"]);
  if (target.kind === "supply") {
    const [limit] = judge.need([target, "prospective-fault-current"]);
    const related = [stated(target, "prospective-fault-current", limit)];
    const why = "Devices were chosen for the smaller one, and may burst when they break more.";
    const todo = "Correct what the survey says, and look at the breaking capacities again.";
    return atMost(subject, "fault-current", read, { limit, against: "Ipf as stated", why, todo, related }, judge);
  }
  const { device, limit, property } = weakest(target, plant, judge);
  const bound: Bound = {
    limit,
    against: `what ${device.id} breaks`,
    why: "A device that has to break more than it is made for may burst, and the fault goes on.",
    todo: "Take a device that breaks more, or one ahead of it that limits the current.",
    related: [stated(device, property, limit)],
  };
  return atMost(subject, "fault-current", read, bound, judge);
}

/** The device that breaks least: the target itself, or of a board all that sit on its bar. */
function weakest(
  target: Thing,
  plant: Plant | undefined,
  judge: Judge,
): { readonly device: Item; readonly limit: Given; readonly property: string } {
  const property = "breaking-capacity";
  if (target.is === "item" && isProtective(target))
    return { device: target, limit: judge.need([target, property])[0], property };
  const board = plant?.boards.find(({ item }) => item === target);
  const devices = board?.circuits.map(({ device }) => device).filter(isProtective) ?? [];
  const capacities = judge.need(...devices.map((device) => [device, property] as const));
  let found: { device: Item; limit: Given; property: string } | undefined;
  for (const [index, limit] of capacities.entries())
    if (!found || limit.value < found.limit.value) found = { device: devices[index]!, limit, property };
  if (found) return found;
  throw new NotKnown([], "no device is described there that would have to break it");
}

/** The time in which an RCD tripped at its rated residual current. */
export function judgeTripTime(subject: ReadingSubject, judge: Judge): Outcome {
  const { target, plant } = subject;
  const [read] = judge.need([subject.reading, "residual-trip-time"]);
  const device = residualOf(target, plant);
  if (!device) throw new NotKnown([], `no RCD is described at ${target.id}`);
  const quick = judge.limit("residual-trip-time");
  const isDelayed = judge.flag(device, "time-delayed");
  // Quick enough for one without delay is quick enough for any.
  if (isDelayed === undefined && read.value > quick.value) return judge.unknown(device, "time-delayed");
  const name = isDelayed ? "residual-trip-time-delayed" : "residual-trip-time";
  const bound: Bound = {
    limit: judge.limit(name),
    against: `${device.id} at its rated residual current`,
    why: "Whoever touches a live part relies on it to be quick.",
    todo: "Work its test button a few times and measure again; then replace it.",
    related: judge.limitSet(name, "the site's own limit"),
  };
  return atMost(subject, "residual-trip-time", read, bound, judge);
}

/** The device itself, or the nearest RCD ahead of a way. */
function residualOf(target: Thing, plant: Plant | undefined): Item | undefined {
  if (target.is !== "item") return undefined;
  if (target.kind === "rcd" || target.kind === "rcbo") return target;
  const circuits = plant?.boards.flatMap((board) => board.circuits) ?? [];
  return circuits.find(({ device }) => device === target)?.rcds.at(-1);
}

/** Resistance of an electrode against what lasts and what the RCDs ask for. */
export function judgeElectrode(subject: ReadingSubject, judge: Judge): Outcome {
  const { plant } = subject;
  const [read] = judge.need([subject.reading, "electrode-resistance"]);
  const devices = residualDevices(plant?.boards.flatMap(({ circuits }) => circuits) ?? []);
  const bound: Bound = {
    limit: electrodeLimit(devices, judge),
    against: "what lasts, and what RCDs ask for",
    why: "In dry or frozen ground it gets worse, and a fault then keeps a voltage that harms.",
    todo: "Drive it deeper, or add a second one.",
    related: judge.limitSet("electrode-resistance", "the site's own limit"),
  };
  return atMost(subject, "electrode-resistance", read, bound, judge);
}
