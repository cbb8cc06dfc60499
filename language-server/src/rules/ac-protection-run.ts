import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Line, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { type DesignCurrent, designCurrent } from "../physics/ac-current.js";
import { joinedCurrent } from "../physics/board-current.js";
import type { Figure, Given } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { capacityOfLine, carryingCables, loadedConductors, sizeAdvice } from "./ac-cables.js";
import type { Capacity } from "./cable-capacity.js";
import { unitNames, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import { exportCurrent, unitCurrents } from "./port-currents.js";
import type { Finding, Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { protectionAlong, supplyWay } from "./supply-way.js";

/** A run with the tree that feeds it. */
export interface ProtectedRun {
  readonly plant: Plant;
  readonly line: Line;
  readonly tree: FeedTree;
}

/** What a run is held against. A cable that is too thin for its device as well as for the current is told of once. */
export function cableOutcomes(subject: ProtectedRun, judge: Judge): Outcome[] {
  const capacity = capacityOfLine(subject.line, subject.tree, judge);
  const device = eachOf(() => againstDevice(subject, capacity, judge));
  const isTold = device.some(({ outcome }) => outcome === "finding");
  const currents = eachOf(() => againstCurrents(subject, capacity, judge));
  return [...currents.filter(({ outcome }) => !(isTold && outcome === "finding")), ...device];
}

/** Ib ≤ Iz. What loads draw is left to their device: In ≤ Iz holds them too. */
function againstCurrents(subject: ProtectedRun, capacity: Capacity, judge: Judge): Outcome[] {
  const { line, tree } = subject;
  const { currents, unknown } = unitCurrents(unitsThrough(tree, line.far), tree, judge);
  const all = isFedByPort(line) ? [...currents, ...portCurrents(line.root, judge)] : currents;
  const design = designCurrent(all);
  return design ? [withinCapacity(subject, capacity, design, judge), ...unknown] : [...unknown];
}

function withinCapacity(subject: ProtectedRun, capacity: Capacity, design: DesignCurrent, judge: Judge): Outcome {
  const { run } = subject.line;
  const { current, direction } = design;
  const limit = capacity.current;
  if (current.value <= limit.value) return judge.pass(current, limit, direction);
  const [flows, carries] = formatApart(current, limit);
  return runFinding(subject, capacity, current, judge, {
    what: `${run.id} may carry ${flows} (${direction}); ${run.cable?.name} as it is laid carries ${carries}.`,
    why: "It runs hotter than its insulation stands whenever the inverter works at its limit.",
  });
}

/** From a backup port up to the first protective device, what the port delivers is all that limits the current. */
function isFedByPort({ root, protectedBy }: Line): boolean {
  return root.item.kind === "backup" && !protectedBy;
}

function portCurrents({ item }: Terminal, judge: Judge) {
  const [own, passed] = judge.need([item, "max-current"], [item, "pass-through-current"]);
  return [
    { direction: "backup", current: own },
    { direction: "pass-through", current: passed },
  ] as const;
}

/** In ≤ Iz; with a generator behind the same device, In + Ig ≤ Iz. */
function againstDevice(subject: ProtectedRun, capacity: Capacity, judge: Judge): Outcome | undefined {
  const device = limiting(subject, judge);
  if (!device) return undefined;
  const { line, tree } = subject;
  const { item, name, property, rating } = device;
  const joining = joiningBehind(subject);
  const added = exportCurrent(joining, tree, judge);
  const current = added ? joinedCurrent(rating, [added]) : rating;
  const limit = capacity.current;
  if (current.value <= limit.value) return judge.pass(current, limit, name);
  const [lets, carries] = formatApart(current, limit);
  const through = `${lets} through ${line.run.id}; ${line.run.cable?.name} as it is laid carries ${carries}`;
  return runFinding(subject, capacity, current, judge, {
    what: added
      ? `${name} (${formatFigure(rating)}) and ${unitNames(joining)} together let ${through}.`
      : `${name} lets ${through}.`,
    why: added
      ? "What a generator adds behind a device does not pass it, so the device never sees the whole current."
      : "A device above what the cable carries does not protect it.",
    related: [stated(item, property, rating)],
  });
}

interface Limiting {
  readonly item: Item;
  readonly name: string;
  readonly property: string;
  readonly rating: Given;
}

/** What limits the current into a run: its device, one ahead of the inverter that passes the grid on, or the supplier's fuse. */
function limiting({ plant, line }: ProtectedRun, judge: Judge): Limiting | undefined {
  const way = line.protectedBy ? undefined : supplyWay(plant, line.near);
  const device = line.protectedBy ?? (way && protectionAlong(way).at(-1));
  if (device)
    return {
      item: device,
      name: device.id,
      property: "rated-current",
      rating: judge.need([device, "rated-current"])[0],
    };
  if (!way) return undefined;
  const [rating] = judge.need([way.supply, "service-fuse"]);
  return { item: way.supply, name: `The service fuse of ${way.supply.id}`, property: "service-fuse", rating };
}

/** Units that feed into the run from between it and its device: from a branch of the same piece of wiring. */
function joiningBehind({ line, tree }: ProtectedRun): Terminal[] {
  let start = line.near;
  for (let hop = tree.arriving.get(start); hop; hop = tree.arriving.get(hop.from)) {
    if (hop.by === line.protectedBy && hop.to.item === hop.by) break;
    start = hop.from;
  }
  const beyond = new Set(unitsThrough(tree, line.far));
  return unitsThrough(tree, start).filter((unit) => !beyond.has(unit));
}

function runFinding(
  { line, tree }: ProtectedRun,
  capacity: Capacity,
  current: Figure,
  judge: Judge,
  said: Pick<Finding, "what" | "why" | "related">,
): Finding {
  const { run } = line;
  const size = sizeAdvice(capacity, current);
  const area = run.cable && judge.quantity(run.cable, "conductor-area");
  return judge.finding({
    ...said,
    todo: `Lay a larger cable${size ? ` (${size})` : ""}, or fit a smaller device where what flows allows it.`,
    spot: { thing: run, word: "cable" },
    value: current,
    limit: capacity.current,
    related: [...(said.related ?? []), ...(run.cable && area ? [stated(run.cable, "conductor-area", area)] : [])],
    fixes: (asked) => carryingCables(line, loadedConductors(line, tree, asked), current, asked),
  });
}
