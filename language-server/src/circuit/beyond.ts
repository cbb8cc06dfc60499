import type { Item, Run } from "../design/things.js";
import type { Terminal } from "./circuit.js";
import type { FeedTree, Hop } from "./feed.js";
import type { Beyond } from "./plant.js";

const branchesOf = new WeakMap<FeedTree, Map<Terminal, Hop[]>>();

/** The hops that leave a terminal away from the root. */
export function branches(tree: FeedTree, terminal: Terminal): readonly Hop[] {
  let all = branchesOf.get(tree);
  if (!all) {
    all = new Map();
    for (const hop of tree.arriving.values()) {
      const own = all.get(hop.from);
      if (own) own.push(hop);
      else all.set(hop.from, [hop]);
    }
    branchesOf.set(tree, all);
  }
  return all.get(terminal) ?? [];
}

/** Every terminal that is fed through a terminal, itself first; boards included with all that hangs on them. */
export function fedThrough(tree: FeedTree, terminal: Terminal): Terminal[] {
  const found = [terminal];
  for (const next of found) for (const { to } of branches(tree, next)) found.push(to);
  return found;
}

/** What is fed through a terminal, up to the next board: see `Beyond`. */
export function beyond(tree: FeedTree, start: Terminal): Beyond {
  const found = {
    runs: new Set<Run>(),
    loads: new Set<Item>(),
    boards: new Set<Item>(),
    gridPorts: new Set<Item>(),
    backupPorts: new Set<Item>(),
    generators: new Set<Item>(),
    surge: new Set<Item>(),
    devices: new Set<Item>(),
  };
  const endsAt: Readonly<Record<string, Set<Item>>> = {
    board: found.boards,
    load: found.loads,
    ac: found.gridPorts,
    backup: found.backupPorts,
    generator: found.generators,
    spd: found.surge,
  };
  const queue = [start];
  for (const terminal of queue) {
    // A bar that is the start is looked behind; a board that is met on the way ends it.
    const end = terminal === start && terminal.name === "bar" ? undefined : endsAt[terminal.item.kind];
    if (end) end.add(terminal.item);
    if (end && terminal.item.kind === "board") continue;
    for (const hop of branches(tree, terminal)) {
      if (hop.by.is === "run") found.runs.add(hop.by);
      else if (isPassed(hop.by, start)) found.devices.add(hop.by);
      queue.push(hop.to);
    }
  }
  return {
    runs: [...found.runs],
    loads: [...found.loads],
    boards: [...found.boards],
    gridPorts: [...found.gridPorts],
    backupPorts: [...found.backupPorts],
    generators: [...found.generators],
    surge: [...found.surge],
    devices: [...found.devices],
  };
}

/** The outgoing side of a way of which only words say what hangs on it. */
export function isOnlyInWords({ item, name, links }: Terminal): boolean {
  const { serves } = item.declaration;
  return name === "out" && serves !== undefined && "kind" in serves && !links.some(({ by }) => by.is === "run");
}

/** A device that is passed on the way, and not the one whose outgoing side is the start. */
function isPassed(item: Item, start: Terminal): boolean {
  return item !== start.item && item.kind !== "board" && item.row?.through !== undefined;
}

/** Adds what lies beyond to a view, found only when somebody asks: most rules never do. */
export function lazily<View extends object>(view: View, find: () => Beyond): View & { readonly beyond: Beyond } {
  let found: Beyond | undefined;
  return Object.defineProperty(view, "beyond", {
    enumerable: true,
    get: () => {
      found ??= find();
      return found;
    },
  }) as View & { readonly beyond: Beyond };
}
