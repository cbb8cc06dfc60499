import type { Item, Run } from "../design/things.js";
import { type Link, otherEnd, type Position, type Terminal } from "./circuit.js";

/** One link on a way, passed from one of its terminals to the other. */
export interface Hop {
  readonly link: Link;
  readonly by: Run | Item;
  readonly from: Terminal;
  readonly to: Terminal;
}

/** A way along conductors, in order. */
export interface Path {
  readonly from: Terminal;
  readonly to: Terminal;
  readonly hops: readonly Hop[];
}

/**
 * How one source feeds all that conductors join to it: for each terminal the hop by which energy arrives there.
 * Inverters are not crossed. A changeover is in one position, never in both.
 */
export interface FeedTree {
  readonly root: Terminal;
  readonly position: Position;
  /** The hop that ends at a terminal. The root has none. */
  readonly arriving: ReadonlyMap<Terminal, Hop>;
  /** Terminals in the order in which they are reached. */
  readonly order: readonly Terminal[];
}

/** Follows the conductors from a terminal outwards, the shortest way first, with every device closed. */
export function feedTree(root: Terminal, position: Position = "grid"): FeedTree {
  const arriving = new Map<Terminal, Hop>();
  const order = [root];
  const seen = new Set(order);
  for (const from of order) {
    for (const link of from.links) {
      if (link.position && link.position !== position) continue;
      const to = otherEnd(link, from);
      if (seen.has(to)) continue;
      seen.add(to);
      arriving.set(to, { link, by: link.by, from, to });
      order.push(to);
    }
  }
  return { root, position, arriving, order };
}

/** The way from the root to a terminal; undefined where the root does not reach it. */
export function pathTo(tree: FeedTree, terminal: Terminal): Path | undefined {
  if (terminal !== tree.root && !tree.arriving.has(terminal)) return undefined;
  const hops: Hop[] = [];
  for (let hop = tree.arriving.get(terminal); hop; hop = tree.arriving.get(hop.from)) hops.push(hop);
  return { from: tree.root, to: terminal, hops: hops.reverse() };
}

/** The shortest way between two terminals along conductors, with every device closed and changeovers at the grid; undefined where there is none. */
export function pathBetween(from: Terminal, to: Terminal): Path | undefined {
  return pathTo(feedTree(from, "grid"), to);
}

export function reversed(path: Path): Path {
  const hops = path.hops.map(({ link, by, from, to }) => ({ link, by, from: to, to: from })).reverse();
  return { from: path.to, to: path.from, hops };
}

/** A way that goes on through a device, or from a bar, into something that is not there yet. */
export function goingOn(path: Path, by: Item, into: Item): Path {
  const to: Terminal = { id: `${into.id}.in`, item: into, name: "in", links: [] };
  const link: Link = { a: path.to, b: to, by, opens: false };
  return { from: path.from, to, hops: [...path.hops, { link, by, from: path.to, to }] };
}

/** Runs of a way, each once, in order. */
export function runsOn(path: Path): Run[] {
  return unique(path.hops.flatMap(({ by }) => (by.is === "run" ? [by] : [])));
}

/** Things that are passed through on a way, each once, in order: devices, and the boards whose bar is crossed. */
export function itemsOn(path: Path): Item[] {
  return unique(path.hops.flatMap(({ by }) => (by.is === "item" ? [by] : [])));
}

/** Opening devices on a way, each once, in order. */
export function openingOn(path: Path): Item[] {
  return unique(path.hops.flatMap(({ by, link }) => (link.opens && by.is === "item" ? [by] : [])));
}

/** Breakers, RCBOs and fuses on a way, each once, in order. */
export function protectionOn(path: Path): Item[] {
  return itemsOn(path).filter(isProtective);
}

/** Whether it opens by itself on too much current. */
export function isProtective(item: Item): boolean {
  return item.kind === "breaker" || item.kind === "rcbo" || item.kind === "fuse";
}

function unique<Thing>(things: readonly Thing[]): Thing[] {
  return [...new Set(things)];
}
