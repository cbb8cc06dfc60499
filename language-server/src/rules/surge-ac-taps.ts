import type { Path } from "../circuit/feed.js";
import type { AcSurgeTap, Plant } from "../circuit/plant.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { lineVoltage } from "../physics/ac-current.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { highestProtectionLevel } from "../physics/surge.js";
import { leastContinuousVoltage } from "../physics/surge-ac.js";
import { faultCurrentAt } from "./fault-current.js";
import { type Judge, NotKnown } from "./judge.js";
import { type SupplyWay, supplyWay } from "./supply-way.js";

/** A surge protective device of the a.c. side. */
export interface AcSurgeSubject {
  readonly plant: Plant;
  readonly tap: AcSurgeTap;
}

export function* acSurgeTaps(plant: Plant): Generator<AcSurgeSubject> {
  for (const tap of plant.surge) yield { plant, tap };
}

/** The supply whose voltage a device stands at: the one that feeds it, or the one that its island stands in for. */
export function supplyOf({ plant, tap }: AcSurgeSubject): Item {
  const supply = tap.path?.from.item.kind === "supply" ? tap.path.from.item : plant.supplies[0];
  if (!supply) throw new NotKnown([], "no supply is described: its voltage is not known");
  return supply;
}

/** Uc that a device between line and earth must have, V. Without an earthed neutral a line may stand at line voltage. */
export function leastContinuous(subject: AcSurgeSubject, judge: Judge): Derived {
  const supply = supplyOf(subject);
  const [voltage] = judge.need([supply, "voltage"]);
  const toEarth: Figure = wordOf(supply, "earthing") === "IT" ? lineVoltage(voltage) : voltage;
  return leastContinuousVoltage(judge.limit("surge-continuous-factor"), toEarth);
}

/** The largest fault current (A) that flows through a device when it fails. */
export function faultThrough({ plant, tap }: AcSurgeSubject, judge: Judge): Derived {
  const terminal = tap.path?.to;
  const way = tap.path && supplyWayOf(plant, tap.path);
  const tree = plant.trees.find(({ root }) => root === tap.path?.from);
  if (!terminal || !way || !tree) throw new NotKnown([], "no supply reaches it: the fault current there is not known");
  return faultCurrentAt(plant, { device: tap.spd, tree, before: terminal, after: terminal }, way, judge);
}

/** A device that is only thought of has a way, but no terminal in the wiring. */
function supplyWayOf(plant: Plant, path: Path): SupplyWay | undefined {
  const { item } = path.from;
  return item.kind === "supply" ? { supply: item, hops: path.hops } : supplyWay(plant, path.to);
}

/** What a device of the a.c. side protects that withstands least, and the highest protection level that does so. */
export interface AcProtected {
  readonly port?: Item;
  readonly withstand: Given;
  readonly highest: Derived;
}

/** The grid port that withstands least; without one, what else is plugged in counts. */
export function weakestOf({ plant }: AcSurgeSubject, judge: Judge): AcProtected {
  const ports = plant.inverters.flatMap(({ grid }) => grid?.port ?? []);
  const all = (ports.length > 0 ? ports : [undefined]).map((port) => ({ port, withstand: withstandOf(port, judge) }));
  const weakest = all.reduce((least, each) => (each.withstand.value < least.withstand.value ? each : least));
  return { ...weakest, highest: highestProtectionLevel(weakest.withstand, judge.limit("surge-protection-factor")) };
}

function withstandOf(port: Item | undefined, judge: Judge): Given {
  return (port && judge.quantity(port, "impulse-withstand")) ?? byCategory(port, judge);
}

function byCategory(port: Item | undefined, judge: Judge): Given {
  const limit = judge.limit("surge-ac-withstand");
  if (limit.origin.kind === "stated") return limit;
  const what = port ? `${port.id}, impulse-withstand not stated` : "impulse withstand of what is plugged in";
  return { ...limit, origin: { kind: "assumed", text: `${what}: ${limit.origin.text}`, source: limit.origin.source } };
}
