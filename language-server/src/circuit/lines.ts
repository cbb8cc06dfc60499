import type { Item, Run } from "../design/things.js";
import { beyond } from "./beyond.js";
import type { Terminal } from "./circuit.js";
import { type FeedTree, feedTree, isProtective } from "./feed.js";
import type { BoardCircuit, Line } from "./plant.js";

/**
 * The trees by which a piece of wiring is fed with a.c.: from each supply, from each backup port with the changeovers
 * thrown, and from whatever else there is where neither reaches (a design without its supply is still a design).
 */
export function feedTrees(region: readonly Terminal[]): FeedTree[] {
  const trees: FeedTree[] = [];
  const reached = new Set<Terminal>();
  const add = (tree: FeedTree): void => {
    trees.push(tree);
    for (const terminal of tree.order) reached.add(terminal);
  };
  for (const terminal of region) if (terminal.item.kind === "supply") add(feedTree(terminal));
  for (const terminal of region) if (terminal.item.kind === "backup") add(feedTree(terminal, "backup"));
  for (const wanted of [isBar, isGenerator, isGridPort])
    for (const terminal of region) if (wanted(terminal) && !reached.has(terminal)) add(feedTree(terminal));
  return trees;
}

const isBar = ({ item, name }: Terminal): boolean => item.kind === "board" && name === "bar";
const isGenerator = ({ item }: Terminal): boolean => item.kind === "generator";
const isGridPort = ({ item }: Terminal): boolean => item.kind === "ac";

/** Every run on the a.c. side, seen from the first tree that feeds it. */
export function linesOf(trees: readonly FeedTree[], ways: ReadonlyMap<Item, BoardCircuit>): Line[] {
  const lines = new Map<Run, Line>();
  for (const tree of trees) {
    const before = new Map<Terminal, { protectedBy?: Item; circuit?: BoardCircuit }>([[tree.root, {}]]);
    for (const terminal of tree.order) {
      const hop = tree.arriving.get(terminal);
      if (!hop) continue;
      const { by, from, to } = hop;
      const context = { ...before.get(from) };
      if (by.is === "item") {
        if (isProtective(by)) context.protectedBy = by;
        context.circuit = by.kind === "board" ? undefined : (ways.get(by) ?? context.circuit);
      } else if (!lines.has(by))
        lines.set(by, { run: by, near: from, far: to, root: tree.root, ...context, beyond: beyond(tree, to) });
      before.set(to, context);
    }
  }
  return [...lines.values()];
}
