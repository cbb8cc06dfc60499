import { isProtective } from "../circuit/feed.js";
import type { Line, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import {
  type CircuitFacts,
  disconnectionTime,
  type EarthingSystem,
  earthingSystem,
  largestLoopWithResidual,
} from "../physics/disconnection.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { disconnectionFixes } from "./disconnection-fixes.js";
import { loopBehind } from "./earth-path.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { largestLoopOf } from "./overcurrent-operation.js";
import { feedsBack, isSurgeLead, linesByDevice } from "./passed-devices.js";
import { stated } from "./phrases.js";
import type { Outcome, Related } from "./rule.js";
import { residualAlong, type SupplyWay, supplyWay } from "./supply-way.js";

/** A device with the ways on which the supply reaches the far ends of what it protects. */
export interface GridCircuit {
  readonly plant: Plant;
  readonly device: Item;
  readonly lines: readonly Line[];
  readonly ways: readonly SupplyWay[];
}

/** Circuits whose cables are drawn; what a survey only names has no length to compute with. */
export function* gridCircuits(plant: Plant): Generator<GridCircuit> {
  for (const [device, all] of linesByDevice(plant)) {
    const lines = all.filter((line) => !isSurgeLead(line));
    if (lines.length === 0 || !isProtective(device)) continue;
    const ways = lines.map(({ far }) => supplyWay(plant, far)).filter((way) => way !== undefined);
    if (ways.length > 0) yield { plant, device, lines, ways };
  }
}

/** Everything that decides about one circuit, once it is known. */
export interface Loop {
  readonly circuit: GridCircuit;
  readonly zs: Derived;
  readonly time: Given;
  readonly voltage: Given;
  readonly system: EarthingSystem;
  /** The way with the longest loop. */
  readonly way: SupplyWay;
}

export function gridDisconnection(circuit: GridCircuit, judge: Judge): Outcome | readonly Outcome[] {
  const missing = new MissingFacts();
  const longest = missing.orElse(() => longestLoop(circuit, judge));
  const timing = missing.orElse(() => timeOf(circuit, judge));
  missing.stop();
  const loop: Loop = { circuit, ...longest!, ...timing! };
  const overcurrent = missing.orElse(() => largestLoopOf(circuit.device, loop.voltage, loop.time, judge));
  const outcomes: Outcome[] = [];
  if (overcurrent && loop.zs.value <= overcurrent.value)
    outcomes.push(judge.pass(loop.zs, overcurrent, "overcurrent, within the time"));
  const residual = missing.orElse(() => residualLimit(loop.way, judge));
  if (residual && loop.zs.value <= residual.limit.value)
    outcomes.push(judge.pass(loop.zs, residual.limit, residual.device.id));
  if (outcomes.length > 0) return outcomes;
  // Another property could still make it hold.
  if (!overcurrent || (!residual && residualAlong(loop.way).length > 0)) return missing.outcomes();
  return tooLong(loop, overcurrent, residual, judge);
}

/** Of all far ends the one with most impedance. Throws NotKnown naming what is missing on any of the ways. */
function longestLoop({ plant, ways }: GridCircuit, judge: Judge): { zs: Derived; way: SupplyWay } {
  const missing = new MissingFacts();
  let found: { zs: Derived; way: SupplyWay } | undefined;
  for (const way of ways) {
    const zs = missing.orElse(() => loopBehind(way, plant, judge));
    if (zs && (!found || zs.value > found.zs.value)) found = { zs, way };
  }
  missing.stop();
  return found!;
}

/** How fast, and at what voltage to earth. */
export function timeOf({ device, lines, ways }: GridCircuit, judge: Judge): Pick<Loop, "time" | "voltage" | "system"> {
  const supply = ways[0]!.supply;
  const missing = new MissingFacts();
  const facts = missing.orElse(() => judge.need([supply, "voltage"], [device, "rated-current"]));
  const earthing = missing.orElse(() => judge.needWord(supply, "earthing"));
  missing.stop();
  const [voltage, rating] = facts!;
  const system = earthingSystem(earthing!);
  if (!system) throw new NotKnown([], `${supply.id} is an ${earthing} system, whose first fault is not disconnected`);
  const use = lines.every(({ beyond }) => beyond.boards.length > 0) ? "distribution" : "final";
  // What else may hang there has sockets until somebody says otherwise.
  const fixedOnly = lines.every((line) => feedsBack(line) && line.beyond.loads.length === 0);
  const question: CircuitFacts = { system, use, fixedOnly, voltage, rating };
  const time = disconnectionTime(judge.ruleSet.ac.disconnection, question);
  if (!time) throw new NotKnown([], `${judge.ruleSet.title} gives no time at ${formatFigure(voltage)}`);
  return { time, voltage, system };
}

/** What the most sensitive RCD on a way allows; undefined where there is none. */
function residualLimit(way: SupplyWay, judge: Judge): { device: Item; limit: Derived } | undefined {
  let found: { device: Item; limit: Derived } | undefined;
  for (const device of residualAlong(way)) {
    const [current] = judge.need([device, "residual-current"]);
    const limit = largestLoopWithResidual(judge.limit("touch-voltage"), current);
    if (!found || limit.value > found.limit.value) found = { device, limit };
  }
  return found;
}

function tooLong(
  loop: Loop,
  overcurrent: Figure,
  residual: { device: Item; limit: Derived } | undefined,
  judge: Judge,
): Outcome {
  const { zs, time, circuit } = loop;
  const { device } = circuit;
  const [has, allows] = formatApart(zs, overcurrent);
  const no = residual
    ? `, and ${residual.device.id} needs ${formatFigure(residual.limit)} at most`
    : ", and no RCD is on the way";
  return judge.finding({
    what: `Zs at the end of what ${device.id} protects is ${has}; ${device.id} needs ${allows} at most to open within ${formatFigure(time)}${no}.`,
    why: "Everything earthed there stays live for as long as the fault lasts.",
    todo:
      loop.system === "TT"
        ? "Put an RCD in the circuit: through an electrode no fault draws enough for anything else."
        : "Lay larger cable, use a device that trips at less current, or put an RCD in the circuit.",
    spot: { thing: device, word: "part" },
    value: zs,
    limit: overcurrent,
    related: relatedTo(loop, judge),
    fixes: (asked) => disconnectionFixes(loop, overcurrent, asked),
  });
}

function relatedTo({ circuit, way }: Loop, judge: Judge): Related[] {
  const external = judge.quantity(way.supply, "external-loop-impedance");
  const own = judge.quantity(circuit.device, "max-loop-impedance");
  return [
    ...(own ? [stated(circuit.device, "max-loop-impedance", own)] : []),
    ...(external ? [stated(way.supply, "external-loop-impedance", external)] : []),
    ...circuit.lines.map(({ run }) => ({
      spot: { thing: run, word: "length" as const },
      message: `${run.id} is part of the loop`,
    })),
  ];
}
