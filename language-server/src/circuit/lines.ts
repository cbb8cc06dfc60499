import type { Item, Run } from "../design/things.js";
import { beyond, lazily } from "./beyond.js";
import type { Terminal } from "./circuit.js";
import { type FeedTree, isProtective } from "./feed.js";
import type { BoardCircuit, Line } from "./plant.js";

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
      } else if (!lines.has(by)) {
        const line = { run: by, near: from, far: to, root: tree.root, ...context };
        lines.set(
          by,
          lazily(line, () => beyond(tree, to)),
        );
      }
      before.set(to, context);
    }
  }
  return [...lines.values()];
}
