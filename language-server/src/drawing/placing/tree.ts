import type { Node, Wire } from "../diagram.js";

/**
 * Nodes that hang together over more than one way, and the single wires that hold such bundles to each other: they form
 * a tree, whose root is what the supply is in. Only those wires can be cut without a drawing falling into a puzzle.
 */
export interface Bundle {
  readonly nodes: Node[];
  readonly children: Bundle[];
}

/** One tree for everything that is joined, what the supply is in first. */
export function bundles(nodes: readonly Node[], wires: readonly Wire[]): Bundle[] {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const ways = new Map<string, { readonly wire: Wire; readonly to: string }[]>(nodes.map(({ id }) => [id, []]));
  for (const wire of wires) {
    ways.get(wire.from.node)?.push({ wire, to: wire.to.node });
    ways.get(wire.to.node)?.push({ wire, to: wire.from.node });
  }
  const steps = walk(rootsFirst(nodes), ways);
  // How far up something below a node reaches by another way: the wire to it is the only one where that is not above it.
  const highest = new Map<string, number>();
  for (const { id, place, by, from } of [...steps.values()].reverse()) {
    let up = Math.min(place, highest.get(id) ?? place);
    for (const { wire, to } of ways.get(id) ?? []) if (wire !== by) up = Math.min(up, steps.get(to)!.place);
    highest.set(id, up);
    if (from !== undefined) highest.set(from, Math.min(highest.get(from) ?? Number.MAX_SAFE_INTEGER, up));
  }
  const trees: Bundle[] = [];
  const bundleOf = new Map<string, Bundle>();
  for (const { id, place, from } of steps.values()) {
    const above = from === undefined ? undefined : bundleOf.get(from);
    if (above && highest.get(id)! < place) {
      above.nodes.push(byId.get(id)!);
      bundleOf.set(id, above);
      continue;
    }
    const bundle: Bundle = { nodes: [byId.get(id)!], children: [] };
    bundleOf.set(id, bundle);
    (above?.children ?? trees).push(bundle);
  }
  return trees;
}

/** The supply, and then everything in the order of the text. */
export function rootsFirst(nodes: readonly Node[]): Node[] {
  const isRoot = ({ symbol }: Node): boolean => symbol === "supply";
  return [...nodes.filter(isRoot), ...nodes.filter((node) => !isRoot(node))];
}

interface Step {
  readonly id: string;
  readonly place: number;
  /** The wire that it was reached by, and from where. */
  readonly by?: Wire;
  readonly from?: string;
}

/** Depth first, each node once, in the order in which it is reached. */
function walk(
  nodes: readonly Node[],
  ways: ReadonlyMap<string, readonly { readonly wire: Wire; readonly to: string }[]>,
): ReadonlyMap<string, Step> {
  const steps = new Map<string, Step>();
  for (const { id: root } of nodes) {
    const waiting: Omit<Step, "place">[] = [{ id: root }];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (steps.has(next.id)) continue;
      steps.set(next.id, { ...next, place: steps.size });
      for (const { wire, to } of (ways.get(next.id) ?? []).toReversed())
        if (!steps.has(to)) waiting.push({ id: to, by: wire, from: next.id });
    }
  }
  return steps;
}
