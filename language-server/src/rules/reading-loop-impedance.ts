import type { Terminal } from "../circuit/circuit.js";
import { isProtective } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { disconnectionTime, earthingSystem, largestLoopWithResidual } from "../physics/disconnection.js";
import { readingDifference } from "../physics/expected-reading.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { largestLoopReading } from "../physics/loop-reading.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { coldLoopBehind } from "./cold-loop.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { largestLoopOf } from "./overcurrent-operation.js";
import { stated } from "./phrases.js";
import { unlike } from "./reading-difference.js";
import type { ReadingSubject } from "./readings.js";
import type { Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { protectionAlong, residualAlong, runsAlong, type SupplyWay, supplyWay } from "./supply-way.js";

/** An earth fault loop impedance as read: what the device there stands, and what the design has. */
export function judgeLoop(subject: ReadingSubject, judge: Judge): Outcome | readonly Outcome[] {
  const { plant, target } = subject;
  if (!plant) throw new NotKnown([], `${target.id} is not on the a.c. side, where there is an earth fault loop`);
  const [read] = judge.need([subject.reading, "loop-impedance"]);
  if (target.kind === "supply") return judgeExternal(subject, target as Item, read, judge);
  const terminal = terminalOf(plant, target);
  const way = terminal && supplyWay(plant, terminal);
  if (!way) throw new NotKnown([], `the supply reaches ${target.id} by no way that is described`);
  const byDevice = eachOf(() => judgeDevice(subject, plant, way, read, judge));
  // What is too long for its device is found once.
  if (byDevice.some(({ outcome }) => outcome === "finding")) return byDevice;
  return [...byDevice, ...eachOf(() => judgeDesign(subject, plant, way, read, judge))];
}

/** The outgoing terminal of a device, the bar of a board, the far end of a run. */
function terminalOf(plant: Plant, target: ReadingSubject["target"]): Terminal | undefined {
  if (target.is === "run") return plant.lines.find(({ run }) => run === target)?.far;
  const own = plant.trees.flatMap(({ order }) => order.filter(({ item }) => item === target));
  const names = ["out", "bar", "in", ""];
  return own.sort((a, b) => names.indexOf(a.name) - names.indexOf(b.name))[0];
}

function judgeExternal(subject: ReadingSubject, supply: Item, read: Given, judge: Judge): Outcome {
  const [expected] = judge.need([supply, "external-loop-impedance"]);
  const difference = readingDifference(read, expected);
  const limit = judge.limit("reading-loop-tolerance");
  if (difference.value <= limit.value) return judge.pass(read, expected, "Ze as stated");
  return judge.finding({
    ...unlike({ target: supply, read, expected, difference, limit, at: "" }),
    why: "Every loop impedance of the design was worked out from the smaller one.",
    todo: "Look for a bad joint, tell the distributor, or correct what the survey says.",
    spot: { thing: subject.reading, property: "loop-impedance" },
    related: [
      stated(supply, "external-loop-impedance", expected),
      ...judge.limitSet("reading-loop-tolerance", "the site's own tolerance"),
    ],
  });
}

interface Allowed {
  readonly limit: Figure;
  readonly device: Item;
}

function judgeDevice(subject: ReadingSubject, plant: Plant, way: SupplyWay, read: Given, judge: Judge): Outcome {
  const missing = new MissingFacts();
  const overcurrent = missing.orElse(() => allowedByOvercurrent(plant, way, judge));
  if (overcurrent && read.value <= overcurrent.limit.value)
    return judge.pass(read, overcurrent.limit, overcurrent.device.id);
  const residual = missing.orElse(() => allowedByResidual(way, judge));
  if (residual && read.value <= residual.limit.value) return judge.pass(read, residual.limit, residual.device.id);
  missing.stop();
  const least = overcurrent ?? residual;
  if (!least) throw new NotKnown([], `no device that disconnects is described ahead of ${subject.target.id}`);
  const [has, allows] = formatApart(read, least.limit);
  const other = overcurrent && residual ? `, and ${residual.device.id} ${formatFigure(residual.limit)}` : "";
  return judge.finding({
    what: `${subject.target.id}: ${has} was read; ${least.device.id} allows ${allows} while conductors are cold${other}.`,
    why: "A fault to earth would not be disconnected in time, and everything earthed there would stay live.",
    todo: "Look for a bad joint first; then lay larger cable, or put an RCD in the circuit.",
    spot: { thing: subject.reading, property: "loop-impedance" },
    value: read,
    limit: least.limit,
    related: judge.limitSet("loop-reading-share", "the site's own share"),
  });
}

/** What the next breaker or fuse stands, as a share of its largest Zs; undefined where there is none. */
function allowedByOvercurrent(plant: Plant, way: SupplyWay, judge: Judge): Allowed | undefined {
  const device = protectionAlong(way).at(-1);
  if (!device || !isProtective(device)) return undefined;
  const missing = new MissingFacts();
  const facts = missing.orElse(() => judge.need([way.supply, "voltage"], [device, "rated-current"]));
  const earthing = missing.orElse(() => judge.needWord(way.supply, "earthing"));
  missing.stop();
  const [voltage, rating] = facts!;
  const system = earthingSystem(earthing!);
  if (!system)
    throw new NotKnown([], `${way.supply.id} is an ${earthing} system, whose first fault is not disconnected`);
  const time = disconnectionTime(judge.ruleSet.ac.disconnection, {
    system,
    use: useOf(plant, device),
    voltage,
    rating,
  });
  if (!time) throw new NotKnown([], `${judge.ruleSet.title} gives no time at ${formatFigure(voltage)}`);
  const limit = largestLoopReading(largestLoopOf(device, voltage, time, judge), judge.limit("loop-reading-share"));
  return { limit, device };
}

function useOf({ boards }: Plant, device: Item): "final" | "distribution" {
  const circuit = boards.flatMap(({ circuits }) => circuits).find((candidate) => candidate.device === device);
  return circuit && circuit.beyond.boards.length > 0 ? "distribution" : "final";
}

/** What the most sensitive RCD on the way stands; undefined where there is none. */
function allowedByResidual(way: SupplyWay, judge: Judge): Allowed | undefined {
  let found: Allowed | undefined;
  for (const device of residualAlong(way)) {
    const [current] = judge.need([device, "residual-current"]);
    const limit = largestLoopWithResidual(judge.limit("touch-voltage"), current);
    if (!found || limit.value > found.limit.value) found = { device, limit };
  }
  return found;
}

/** More than the cables explain is a bad joint; less is a path through pipes and steel, which harms nobody. */
function judgeDesign(
  subject: ReadingSubject,
  plant: Plant,
  way: SupplyWay,
  read: Given,
  judge: Judge,
): Outcome | undefined {
  const expected = longestOf(drawnWays(subject.target, plant, way), plant, judge);
  if (!expected) return undefined;
  const difference = readingDifference(read, expected);
  const limit = judge.limit("reading-loop-tolerance");
  if (difference.value <= limit.value) return judge.holds(`${formatFigure(expected)} expected`);
  return judge.finding({
    ...unlike({ target: subject.target, read, expected, difference, limit, at: " of cold conductors" }),
    severity: "warning",
    why: "The cables do not explain it: a joint on the way is bad, or a run is longer than drawn.",
    todo: "Measure at the ends of each run until the step is found.",
    spot: { thing: subject.reading, property: "loop-impedance" },
    related: judge.limitSet("reading-loop-tolerance", "the site's own tolerance"),
  });
}

/**
 * To where the circuit's reading is taken: the far ends of what a device protects. A circuit whose cables are not drawn
 * has no loop to compare with.
 */
function drawnWays(target: ReadingSubject["target"], plant: Plant, way: SupplyWay): readonly SupplyWay[] {
  if (target.is === "run" || !isProtective(target)) return runsAlong(way).length > 0 ? [way] : [];
  return plant.lines.flatMap(({ protectedBy, far }) => (protectedBy === target ? (supplyWay(plant, far) ?? []) : []));
}

function longestOf(ways: readonly SupplyWay[], plant: Plant, judge: Judge): Derived | undefined {
  const missing = new MissingFacts();
  let longest: Derived | undefined;
  for (const way of ways) {
    const loop = missing.orElse(() => coldLoopBehind(way, plant, judge));
    if (loop && (!longest || loop.value > longest.value)) longest = loop;
  }
  missing.stop();
  return longest;
}
