import { type Circuit, otherEnd, type Terminal } from "../circuit/circuit.js";
import type { Item } from "../design/things.js";
import type { Side } from "./diagram.js";

/**
 * Which way the picture runs. The supply stands on the right, the arrays on the left; what a backup port feeds grows to
 * the right of its inverter, because the port is on that side of it.
 */
export interface Orientation {
  /** The side of its node that a terminal is on. */
  side(terminal: Terminal): Side;
  /** The side of a terminal on which a neighbour is drawn, for terminals that are open to both sides. */
  towards(terminal: Terminal, neighbour: Terminal): Side;
  /** Whether one terminal is drawn further left than another. */
  isLeftOf(a: Terminal, b: Terminal): boolean;
}

interface Reached {
  /** Steps from where the picture starts. */
  readonly depth: number;
  /** Whether what lies beyond is drawn further right. */
  readonly rightwards: boolean;
}

/** Things with one terminal that can be drawn on either side of their neighbour. */
const leaves = new Set(["spd", "load", "electrode", "earthing"]);
const westPorts = new Set(["tracker", "battery"]);

export function orient(circuit: Circuit): Orientation {
  const reached = walk(circuit);
  const at = (terminal: Terminal): Reached => reached.get(terminal) ?? { depth: 0, rightwards: false };
  const nearSide = (terminal: Terminal): Side => (at(terminal).rightwards ? "west" : "east");

  const side = (terminal: Terminal): Side => {
    const { item } = terminal;
    if (item.kind === "string" || item.kind === "generator") return "east";
    if (item.kind === "supply") return "west";
    if (item.parent?.kind === "inverter") return westPorts.has(item.kind) ? "west" : "east";
    if (item.kind === "battery" || item.parent?.kind === "battery") return "east";
    if (item.kind === "combiner") return terminal.name === "out" ? "east" : "west";
    if (item.parent?.kind === "combiner") return "west";
    if (item.kind === "board") return nearSide(terminal);
    const board = boardOf(item);
    if (board) return opposite(boardSide(board));
    if (leaves.has(item.kind)) return leafSide(terminal);
    return nearest(terminal) ? nearSide(terminal) : opposite(nearSide(terminal));
  };
  const boardSide = (board: Item): Side => {
    const entry = circuit.terminals.get(`${board.id}.in`);
    return entry ? nearSide(entry) : "east";
  };
  const leafSide = (terminal: Terminal): Side => {
    const [link] = terminal.links;
    if (!link) return nearSide(terminal);
    const neighbour = otherEnd(link, terminal);
    if (leaves.has(neighbour.item.kind)) return nearSide(terminal);
    if (isOpenToBothSides(neighbour)) return opposite(towards(neighbour, terminal));
    return opposite(side(neighbour));
  };
  /** Whether a device's terminal is the one that the supply is nearer to; the later one where both are as far. */
  const nearest = (terminal: Terminal): boolean => {
    let best: Terminal | undefined;
    for (const name of terminal.item.row?.terminals ?? []) {
      const own = circuit.terminals.get(`${terminal.item.id}.${name}`);
      if (own && (!best || at(own).depth <= at(best).depth)) best = own;
    }
    return best === terminal;
  };
  const towards = (terminal: Terminal, neighbour: Terminal): Side => {
    const isNearer = at(neighbour).depth < at(terminal).depth;
    return isNearer ? nearSide(terminal) : opposite(nearSide(terminal));
  };
  const position = (terminal: Terminal): number => at(terminal).depth * (at(terminal).rightwards ? 1 : -1);
  return { side, towards, isLeftOf: (a, b) => position(a) < position(b) };
}

export function opposite(side: Side): Side {
  return side === "west" ? "east" : "west";
}

/** A terminal block is a bar: conductors land on it from both sides. */
export function isOpenToBothSides({ item }: Terminal): boolean {
  return item.kind === "terminal-block";
}

function boardOf(item: Item): Item | undefined {
  for (let outer = item.parent; outer; outer = outer.parent) if (outer.kind === "board") return outer;
  return undefined;
}

/**
 * From the supplies over conductors and through inverters; what no supply is joined to starts at what comes next, and a
 * piece without any of these at the end that is farthest from its sources.
 */
function walk(circuit: Circuit): ReadonlyMap<Terminal, Reached> {
  const reached = new Map<Terminal, Reached>();
  const through = new Map<Item, readonly Terminal[]>();
  for (const { inverter, ports } of circuit.converters)
    through.set(
      inverter,
      ports.map(({ terminal }) => terminal),
    );
  for (const each of starts(circuit)) {
    if (reached.has(each)) continue;
    const root = isRoot(each) ? each : farthestFrom(each);
    reached.set(root, { depth: 0, rightwards: root.item.kind === "backup" });
    let queue = [root];
    // Conductors first: a board between supply and inverter is reached from the supply, never through a backup port.
    while (queue.length > 0) {
      const crossings: Terminal[] = [];
      for (let index = 0; index < queue.length; index++) {
        const terminal = queue[index]!;
        const { depth, rightwards } = reached.get(terminal)!;
        for (const link of terminal.links) {
          const next = otherEnd(link, terminal);
          if (reached.has(next)) continue;
          reached.set(next, { depth: depth + 1, rightwards });
          queue.push(next);
        }
        if (terminal.item.parent && through.has(terminal.item.parent)) crossings.push(terminal);
      }
      queue = [];
      for (const terminal of crossings) {
        const { depth } = reached.get(terminal)!;
        for (const port of through.get(terminal.item.parent!) ?? []) {
          if (reached.has(port)) continue;
          reached.set(port, { depth: depth + 1, rightwards: port.item.kind === "backup" });
          queue.push(port);
        }
      }
    }
  }
  return reached;
}

/** What the picture begins at on the right, the first sort that there is before the others. */
const rootSorts: readonly ((terminal: Terminal) => boolean)[] = [
  ({ item }) => item.kind === "supply",
  ({ item, name }) => item.kind === "board" && name === "in",
  ({ item }) => item.kind === "ac",
  ({ item }) => item.parent?.kind === "inverter",
];

function isRoot(terminal: Terminal): boolean {
  return rootSorts.some((isOne) => isOne(terminal));
}

function isSource({ item }: Terminal): boolean {
  return item.kind === "string" || item.kind === "generator" || item.kind === "battery";
}

function starts(circuit: Circuit): Terminal[] {
  const all = [...circuit.terminals.values()];
  return [...rootSorts.flatMap((isOne) => all.filter(isOne)), ...all.filter(isSource), ...all];
}

/** The other end of a piece of the circuit; what hangs from a conductor, and another source, is no end. */
function farthestFrom(start: Terminal): Terminal {
  const seen = new Map([[start, 0]]);
  let [best, longest] = [start, 0];
  for (const [terminal, steps] of seen) {
    if (steps > longest && !isSource(terminal) && !leaves.has(terminal.item.kind)) [best, longest] = [terminal, steps];
    for (const link of terminal.links) {
      const next = otherEnd(link, terminal);
      if (!seen.has(next)) seen.set(next, steps + 1);
    }
  }
  return best;
}
