import type { Diagram, Node, Side, Wire, WireEnd } from "../diagram.js";
import { type Bundle, bundles, rootsFirst } from "./tree.js";

/** A piece of a diagram that is placed by itself: a diagram too, whose cut wires end in continuations. */
export interface Part {
  readonly diagram: Diagram;
  readonly continuations: readonly Continuation[];
}
export interface Continuation {
  /** The node of the part that stands for what is beyond. */
  readonly node: string;
  readonly wire: Wire;
  /** The wire's end in this part, and the one beyond. */
  readonly here: WireEnd;
  readonly there: WireEnd;
  readonly side: Side;
}

/**
 * Cuts a diagram where single wires hold it together, into parts of some `limit` nodes: the plants on a board, the
 * strings on an inverter. Equal branches are treated alike, so that one more of them moves no other.
 */
export function cut(diagram: Diagram, limit: number): Part[] {
  const { nodes, wires } = diagram;
  if (nodes.reduce((sum, node) => sum + weight(node), 0) <= limit) return [{ diagram, continuations: [] }];
  const groups: Bundle[][] = [];
  const whole = bundles(nodes, wires);
  const rests = whole.map((tree) => ({ trees: [tree], weight: shed(tree, limit, groups) }));
  for (const batch of batches(rests, limit)) groups.push(batch);
  const partOf = new Map<string, number>();
  // What was shed later lies nearer to the supply, and holds what was shed before.
  for (const [index, group] of [...groups.entries()].reverse()) for (const tree of group) claim(tree, index, partOf);
  const inOrder = new Set([...rootsFirst(nodes)].map(({ id }) => partOf.get(id)!));
  return [...inOrder].map((part) => partFrom(diagram, part, partOf));
}

/** A board with many ways takes as much room as several devices. */
function weight({ inside }: Node): number {
  const rows = inside?.is === "board" ? inside.sections.reduce((sum, section) => sum + section.rows.length, 0) : 0;
  return 1 + rows / 4;
}

/** Branches so small are no part of their own. */
const twig = 3;

interface Rest {
  readonly trees: readonly Bundle[];
  readonly weight: number;
}

/** Cuts off what is too much for one part, and returns the weight of what stays with the bundle. */
function shed(root: Bundle, limit: number, groups: Bundle[][]): number {
  const rests = new Map<Bundle, number>();
  for (const bundle of belowFirst(root)) {
    const own = bundle.nodes.reduce((sum, node) => sum + weight(node), 0);
    const branches = bundle.children.map((child): Rest => ({ trees: [child], weight: rests.get(child)! }));
    const whole = own + sumOf(branches);
    if (whole <= limit) {
      rests.set(bundle, whole);
      continue;
    }
    const isTwig = ({ weight: each }: Rest): boolean => each < twig;
    const twigs = branches.filter(isTwig);
    const cutOff = own + sumOf(twigs) <= limit ? branches.filter((each) => !isTwig(each)) : branches;
    groups.push(...batches(cutOff, limit));
    rests.set(bundle, whole - sumOf(cutOff));
  }
  return rests.get(root)!;
}

function sumOf(rests: readonly Rest[]): number {
  return rests.reduce((sum, { weight: each }) => sum + each, 0);
}

function belowFirst(root: Bundle): Bundle[] {
  const found: Bundle[] = [];
  const waiting = [root];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    found.push(next);
    waiting.push(...next.children);
  }
  return found.reverse();
}

/** In the order of the text, as many together as the limit lets be. */
function batches(rests: readonly Rest[], limit: number): Bundle[][] {
  const found: Bundle[][] = [];
  let filled = Number.POSITIVE_INFINITY;
  for (const { trees, weight: each } of rests) {
    if (filled + each > limit) {
      found.push([]);
      filled = 0;
    }
    found[found.length - 1]!.push(...trees);
    filled += each;
  }
  return found;
}

/** Gives a tree to a part, and with it all below that no later one claims. */
function claim(tree: Bundle, part: number, partOf: Map<string, number>): void {
  const waiting = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    for (const { id } of next.nodes) partOf.set(id, part);
    waiting.push(...next.children);
  }
}

function partFrom(whole: Diagram, part: number, partOf: ReadonlyMap<string, number>): Part {
  const nodes = whole.nodes.filter(({ id }) => partOf.get(id) === part);
  const wires: Wire[] = [];
  const continuations: Continuation[] = [];
  for (const wire of whole.wires) {
    const [from, to] = [partOf.get(wire.from.node) === part, partOf.get(wire.to.node) === part];
    if (from && to) wires.push(wire);
    if (from === to) continue;
    const [here, there] = from ? [wire.from, wire.to] : [wire.to, wire.from];
    const node = `${wire.id} goes on to ${terminalOf(there)}`;
    const end = { node, port: node };
    wires.push(from ? { ...wire, to: end } : { ...wire, from: end });
    continuations.push({ node, wire, here, there, side: from ? "east" : "west" });
  }
  const drawn = [...nodes, ...continuations.map(stump)];
  return { diagram: { ...whole, nodes: drawn, wires }, continuations };
}

/** Where a cut wire ends. */
function stump({ node, wire, there, side }: Continuation): Node {
  return {
    id: node,
    symbol: "continuation",
    current: wire.current,
    label: [],
    description: `${wire.id} goes on to ${terminalOf(there)}`,
    ports: [{ id: node, side: side === "east" ? "west" : "east" }],
  };
}

/** As a run names it: the terminal may be drawn on both sides of its node, and `in` and `out` go without saying. */
export function terminalOf({ port }: WireEnd): string {
  return port.replace(/(\.in|\.out)?(@west|@east)?$/, "");
}
