import { fedThrough } from "../circuit/beyond.js";
import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, isProtective } from "../circuit/feed.js";
import type { BoardCircuit, BoardView, Line, Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { unitsThrough } from "./feeding-units.js";
import { isSpare } from "./landing.js";
import { aheadOfInverter, isTails } from "./passed-devices.js";
import { treeAt } from "./supply-way.js";

/** A bar, a main switch or a run of tails, with the sources that may load it. */
export interface JoinedPart {
  readonly thing: Item | Run;
  readonly is: "bar" | "switch" | "tails";
  readonly tree: FeedTree;
  /** For tails: the run as the tree sees it. */
  readonly line?: Line;
  /** What limits the supply's share: a device on the way, or the supply with its service fuse. */
  readonly limiter: Item;
  /** Units that join between the limiter and the part, so that loads behind it may draw on both. */
  readonly joining: readonly Terminal[];
  /** Units behind the part, which send through it, and may draw. */
  readonly sending: readonly Terminal[];
  /** Whether loads draw through it; without any, the units behind it are all that loads it. */
  readonly loads: LoadsBehind;
}

/** Parts of a plant that a generator loads beside the supply. */
export function* joinedParts(plant: Plant): Generator<JoinedPart> {
  for (const board of plant.boards) yield* partsOfBoard(plant, board);
  for (const line of plant.lines) {
    if (!isTails(line)) continue;
    const tree = treeAt(plant, line.root);
    const part = seriesPart(plant, tree, line.far, { thing: line.run, is: "tails", line });
    if (part) yield part;
  }
}

function* partsOfBoard(plant: Plant, board: BoardView): Generator<JoinedPart> {
  for (const { root, path } of board.feeds) {
    if (root.item.kind === "board") continue;
    const tree = treeAt(plant, root);
    for (const device of board.mainSwitches) {
      const after = path.hops.find(({ by, to }) => by === device && to.item === device)?.to;
      const part = after && seriesPart(plant, tree, after, { thing: device, is: "switch" });
      if (part) yield part;
    }
    yield* bar(plant, board, tree, path.to);
  }
}

/** On a bar with loads everything meets; on one with generators only, they send through it. */
function* bar(plant: Plant, board: BoardView, tree: FeedTree, terminal: Terminal): Generator<JoinedPart> {
  const { start, limiter } = limitBefore(plant, tree, terminal);
  const joining = unitsThrough(tree, start);
  const sending = unitsThrough(tree, terminal);
  if (!limiter || joining.length === 0) return;
  const loads = loadsBehind(plant, tree, terminal);
  yield { thing: board.item, is: "bar", tree, limiter, joining, sending, loads };
}

function seriesPart(
  plant: Plant,
  tree: FeedTree,
  after: Terminal,
  part: Pick<JoinedPart, "thing" | "is" | "line">,
): JoinedPart | undefined {
  const { start, limiter } = limitBefore(plant, tree, after);
  const sending = unitsThrough(tree, after);
  const behind = new Set(sending);
  const joining = unitsThrough(tree, start).filter((unit) => !behind.has(unit));
  if (!limiter || joining.length + sending.length === 0) return undefined;
  return { ...part, tree, limiter, joining, sending, loads: loadsBehind(plant, tree, after) };
}

/** Loads are there, or not, or a board of which only generators are known does not say whether it was there before. */
export type LoadsBehind =
  | { readonly are: "there" }
  | { readonly are: "none" }
  | { readonly are: "unsaid"; readonly board: Item };

/** A board that was there before has loads whether or not a survey lists them. */
function loadsBehind(plant: Plant, tree: FeedTree, terminal: Terminal): LoadsBehind {
  const fed = new Set(fedThrough(tree, terminal).map(({ item }) => item));
  const boards = plant.boards.filter(({ item }) => fed.has(item));
  if ([...fed].some(({ kind }) => kind === "load") || boards.some(hasLoads)) return { are: "there" };
  const unsaid = boards.find(({ item }) => flagOf(item, "existing") === undefined);
  return unsaid ? { are: "unsaid", board: unsaid.item } : { are: "none" };
}

function hasLoads({ item, circuits }: BoardView): boolean {
  return flagOf(item, "existing") === true || circuits.some(isForLoads);
}

function isForLoads(circuit: BoardCircuit): boolean {
  const { beyond } = circuit;
  const isForOthers =
    beyond.gridPorts.length + beyond.generators.length + beyond.surge.length + beyond.boards.length > 0;
  return beyond.loads.length > 0 || (!isForOthers && !isSpare(circuit));
}

/** The last protective device before a terminal, and where what it protects begins; the root where there is none. */
function limitBefore(plant: Plant, tree: FeedTree, terminal: Terminal): { start: Terminal; limiter?: Item } {
  for (let hop = tree.arriving.get(terminal); hop; hop = tree.arriving.get(hop.from))
    if (hop.by.is === "item" && isProtective(hop.by) && hop.to.item === hop.by)
      return { start: hop.to, limiter: hop.by };
  const { root } = tree;
  if (root.item.kind === "supply") return { start: root, limiter: root.item };
  return { start: root, limiter: aheadOfInverter(plant, root) };
}
