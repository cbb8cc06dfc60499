import { type FeedTree, isProtective, pathTo } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import { given, wordOf } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { disconnectionTime, operatingCurrent } from "../physics/disconnection.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { islandFaultCurrent } from "../physics/island.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { deviceFixes } from "./device-parts.js";
import { loopInside } from "./earth-path.js";
import { type Judge, NotKnown } from "./judge.js";
import { type Island, islandsOf } from "./mains.js";
import { MissingFacts } from "./missing-facts.js";
import { operatingCurrentOf } from "./overcurrent-operation.js";
import { passedIn } from "./passed-devices.js";
import { stated } from "./phrases.js";
import type { Fix, Outcome } from "./rule.js";
import { protectionAlong, residualAlong, runsAlong } from "./supply-way.js";

/** A device that goes on without the grid, with what lies between the backup port and the far ends behind it. */
export interface IslandCircuit {
  readonly plant: Plant;
  readonly island: Island;
  readonly device: Item;
  /** RCDs from the port to the device, itself included. */
  readonly residual: readonly Item[];
  /** Runs from the port to each far end that is drawn; empty where none is. */
  readonly ways: readonly (readonly Run[])[];
}

export function* islandCircuits(plant: Plant): Generator<IslandCircuit> {
  for (const island of islandsOf(plant)) {
    const ways = waysByDevice(island.tree);
    for (const { device, after } of passedIn(island.tree, isProtective)) {
      const path = pathTo(island.tree, after);
      if (path) yield { plant, island, device, residual: residualAlong(path), ways: ways.get(device) ?? [] };
    }
  }
}

/** The way to the end of every run, by the device that protects it next. */
function waysByDevice(tree: FeedTree): Map<Item, Run[][]> {
  const found = new Map<Item, Run[][]>();
  for (const [terminal, { by }] of tree.arriving) {
    const path = by.is === "run" ? pathTo(tree, terminal) : undefined;
    const device = path && protectionAlong(path).at(-1);
    if (!path || !device) continue;
    const own = found.get(device);
    if (own) own.push(runsAlong(path));
    else found.set(device, [runsAlong(path)]);
  }
  return found;
}

export function islandDisconnection(circuit: IslandCircuit, judge: Judge): Outcome {
  const [first] = circuit.residual;
  // The loop inside a house is a few ohms of copper; what an RCD needs is hundreds.
  if (first) return judge.holds(`${first.id} opens on residual current in an island`);
  const { device } = circuit;
  const missing = new MissingFacts();
  const { port } = circuit.island.backup;
  const fed = missing.orElse(() => judge.need([port, "fault-current"])[0]);
  // A current that is too small is so for any length of time.
  const fedFor = missing.orElse(() => judge.need([port, "fault-time"])[0]);
  const timing = missing.orElse(() => timeOf(circuit, judge));
  const needed = timing && missing.orElse(() => operatingCurrentOf(device, timing.time, judge, timing.voltage));
  const loop = missing.orElse(() => longestOf(circuit, judge));
  if (!fed || !timing || !needed) throw missing.asNotKnown();
  const current = islandFaultCurrent(fed, timing.voltage, loop);
  const lasts = fedFor && fedFor.value < judge.ruleSet.ac.instantaneousTime.value ? fedFor : undefined;
  if (current.value < needed.value || lasts) return neverOpens({ circuit, current, needed, ...timing, lasts }, judge);
  missing.stop();
  if (circuit.ways.length === 0) throw new NotKnown([], `no run is drawn behind ${device.id}`);
  return judge.passAtLeast(current, needed, "in an island: overcurrent");
}

/** Behind its own neutral–earth link an island is a TN system. */
function timeOf({ plant, device }: IslandCircuit, judge: Judge): { time: Given; voltage: Given } {
  const [supply] = plant.supplies;
  if (!supply) throw new NotKnown([], "there is no supply, so the voltage of the island is not known");
  const [voltage, rating] = judge.need([supply, "voltage"], [device, "rated-current"]);
  const question = { system: "TN", use: "final", voltage, rating } as const;
  const time = disconnectionTime(judge.ruleSet.ac.disconnection, question);
  if (!time) throw new NotKnown([], `${judge.ruleSet.title} gives no time at ${formatFigure(voltage)}`);
  return { time, voltage };
}

function longestOf({ plant, ways }: IslandCircuit, judge: Judge): Derived | undefined {
  let longest: Derived | undefined;
  for (const runs of ways) {
    const loop = loopInside(runs, plant, judge);
    if (!longest || loop.value > longest.value) longest = loop;
  }
  return longest;
}

interface Unopened {
  readonly circuit: IslandCircuit;
  readonly current: Derived;
  readonly needed: Derived;
  readonly time: Given;
  /** How long the inverter feeds the fault, where that is too short. */
  readonly lasts?: Given;
}

function neverOpens(found: Unopened, judge: Judge): Outcome {
  const { circuit, current, needed, time, lasts } = found;
  const { device, island } = circuit;
  const [feeds, needs] = formatApart(current, needed);
  const how = lasts
    ? `${feeds} for ${formatFigure(lasts)} into a fault; ${device.id} needs ${needs} for up to ${formatFigure(judge.ruleSet.ac.instantaneousTime)}`
    : `${feeds} into a fault; ${device.id} needs ${needs} to open within ${formatFigure(time)}`;
  return judge.finding({
    what: `Without the grid ${island.inverter.id} feeds ${how}, and no RCD is on the way.`,
    why: "The fault is not disconnected, and what is earthed behind it may stay live until the inverter gives up.",
    todo: "Put an RCD or RCBO ahead of every circuit that goes on without the grid, and prove it by test.",
    spot: { thing: device, word: "part" },
    value: current,
    limit: needed,
    related: [
      stated(island.backup.port, "fault-current", judge.need([island.backup.port, "fault-current"])[0]),
      ...(lasts ? [stated(island.backup.port, "fault-time", lasts)] : []),
    ],
    fixes: (asked) => (lasts ? [] : quickerDevices(found, asked)),
  });
}

function quickerDevices({ circuit, current, time }: Unopened, judge: Judge): readonly Fix[] {
  return deviceFixes(judge, {
    device: circuit.device,
    changes: ["curve"],
    preview: (part) => {
      const needs = currentNeeded(wordOf(part, "curve"), given(part, "rated-current"), time, judge);
      return needs && needs.value <= current.value ? `trips at ${formatFigure(needs)}` : undefined;
    },
  });
}

function currentNeeded(curve: string | undefined, rating: Given | undefined, time: Figure, judge: Judge) {
  if (!curve || !rating) return undefined;
  return operatingCurrent(judge.ruleSet.ac.operatingMultiples, { curve, rating }, time.value);
}
