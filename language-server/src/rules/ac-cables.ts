import type { FeedTree } from "../circuit/feed.js";
import type { Line } from "../circuit/plant.js";
import { given, wordOf } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import { smallestSizeForCurrent } from "../physics/ampacity.js";
import { formatValue } from "../physics/display.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { type Capacity, capacityOf } from "./cable-capacity.js";
import { linesOf } from "./feeding-units.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";
import { cableOf } from "./run-facts.js";

/** Runs of the a.c. side as the tables see them, and the cables that would do instead. */

/** How many conductors of a run warm it: as it says itself, or as what it joins has phases. */
export function loadedConductors(line: Line, tree: FeedTree, judge: Judge): 2 | 3 {
  return isThreePhase(line, tree, judge) ? 3 : 2;
}

function isThreePhase(line: Line, tree: FeedTree, judge: Judge): boolean {
  const { run, protectedBy, beyond } = line;
  const own = judge.quantity(run, "phases")?.value;
  if (own !== undefined || wordOf(run, "phase")) return own === 3;
  if (protectedBy && isForOnePhase(protectedBy)) return false;
  if (linesOf(tree.root.item, judge) === 1) return false;
  const ends = [...beyond.gridPorts, ...beyond.backupPorts, ...beyond.generators, ...beyond.boards, ...beyond.loads];
  return ends.some((end) => linesOf(end, judge) === 3);
}

/** One or two poles cannot protect three lines. */
function isForOnePhase(device: Item): boolean {
  const poles = given(device, "poles")?.value;
  return (poles !== undefined && poles < 3) || wordOf(device, "phase") !== undefined;
}

export function capacityOfLine(line: Line, tree: FeedTree, judge: Judge): Capacity {
  return capacityOf(line.run, cableOf(line.run), judge, loadedConductors(line, tree, judge));
}

/** What size would carry a current, laid as the run is. */
export function sizeAdvice({ column, factors }: Capacity, current: Figure): string {
  const size = smallestSizeForCurrent(column, factors, current.value);
  return size === undefined ? "" : `laid like this it takes ${formatValue(size, "area", "mm2")}`;
}

/** Cables in scope that carry a current, laid as the run is. */
export function carryingCables(line: Line, loaded: 2 | 3, current: Figure, judge: Judge): Fix[] {
  return largerCables(line.run, judge, (part) => {
    const iz = capacityIn(line.run, part, loaded, judge);
    if (!iz || iz.value < current.value) return undefined;
    return `carries ${formatFigure(iz)}, ${percent(current.value / iz.value)}`;
  });
}

/** Cables in scope of the same sort that would hold, the thinnest first. */
export function largerCables(run: Run, judge: Judge, preview: (part: Part) => string | undefined): Fix[] {
  const type = run.cable && wordOf(run.cable, "type");
  return partFixes(judge, {
    thing: run,
    properties: [],
    preview: (part) => (wordOf(part, "type") === type ? preview(part) : undefined),
    order: (part) => given(part, "conductor-area")?.value ?? 0,
  });
}

function capacityIn(run: Run, part: Part, loaded: 2 | 3, judge: Judge): Figure | undefined {
  return ifKnown(() => capacityOf(run, part, judge, loaded).current);
}

/** For fixes: a part of which too little is known is no offer. */
export function ifKnown<Result>(work: () => Result): Result | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}
