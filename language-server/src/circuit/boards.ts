import type { Design } from "../design/design.js";
import type { Item } from "../design/things.js";
import { beyond, lazily } from "./beyond.js";
import { type Circuit, type Terminal, terminalOf } from "./circuit.js";
import { type FeedTree, pathTo } from "./feed.js";
import type { FeedTrees } from "./feed-trees.js";
import { isBeforeBar } from "./inside.js";
import type { Beyond, BoardCircuit, BoardView, Feed } from "./plant.js";

const nothing: Beyond = {
  runs: [],
  loads: [],
  boards: [],
  gridPorts: [],
  backupPorts: [],
  generators: [],
  surge: [],
  devices: [],
};

/** A board with its ways, each with what it feeds. */
export function boardView(board: Item, design: Design, circuit: Circuit, trees: FeedTrees): BoardView {
  const rcds: Item[] = [];
  const circuits: BoardCircuit[] = [];
  const addWays = (items: readonly Item[], through: readonly Item[]): void => {
    for (const item of items) {
      if (item.kind === "rcd") {
        rcds.push(item);
        if (item.children.length > 0) addWays(item.children, [...through, item]);
        else circuits.push(boardCircuit(board, item, through, design, circuit, trees));
      } else if (isWay(item)) circuits.push(boardCircuit(board, item, through, design, circuit, trees));
    }
  };
  addWays(board.children, []);
  return {
    item: board,
    mainSwitches: board.children.filter(isBeforeBar),
    rcds,
    circuits,
    feeds: feedsInto(terminalOf(circuit, board, "in"), terminalOf(circuit, board, "bar"), trees),
  };
}

function isWay(item: Item): boolean {
  return item.row?.terminals.includes("out") === true && !isBeforeBar(item);
}

function boardCircuit(
  board: Item,
  device: Item,
  rcds: readonly Item[],
  design: Design,
  circuit: Circuit,
  trees: FeedTrees,
): BoardCircuit {
  const out = terminalOf(circuit, device, "out");
  const { way, serves } = device.declaration;
  const view = {
    board,
    way: way?.value,
    device,
    rcds,
    serves: design.serves.get(device),
    servesText: serves && "kind" in serves ? serves.value : undefined,
  };
  return lazily(view, () => (out ? fedFromWay(device, out, trees) : nothing));
}

/** What hangs on a way, seen from a tree that arrives there through the bar; without one, nothing can be told. */
function fedFromWay(device: Item, out: Terminal, trees: FeedTrees): Beyond {
  for (const tree of trees.reaching(out)) if (tree.arriving.get(out)?.by === device) return beyond(tree, out);
  return nothing;
}

/** Sources that reach a board's bar through its incoming terminal, the supply first. */
function feedsInto(entry: Terminal | undefined, bar: Terminal | undefined, trees: FeedTrees): Feed[] {
  if (!entry || !bar) return [];
  const feeds: Feed[] = [];
  for (const tree of trees.reaching(bar)) {
    const path = pathTo(tree, bar);
    if (!path?.hops.some(({ from, to }) => from === entry || to === entry)) continue;
    feeds.push({ source: sourceItem(tree.root), root: tree.root, mode: modeOf(tree, bar), path });
  }
  return feeds;
}

function sourceItem(root: Terminal): Item {
  return root.item.kind === "ac" || root.item.kind === "backup" ? (root.item.parent ?? root.item) : root.item;
}

/** The supply feeds while it is there; a backup port always, unless a changeover joins it only in an island. */
function modeOf(tree: FeedTree, place: Terminal): Feed["mode"] {
  if (tree.root.item.kind !== "backup") return "grid";
  const path = pathTo(tree, place);
  return path?.hops.some(({ link }) => link.position !== undefined) ? "island" : "both";
}
