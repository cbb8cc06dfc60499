import type { Design } from "../design/design.js";
import { textOf, wordOf } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { fedThrough, isOnlyInWords } from "./beyond.js";
import { type Circuit, type Terminal, terminalOf } from "./circuit.js";
import { type FeedTree, feedTree, isProtective, openingOn, type Path, pathTo, protectionOn, reversed } from "./feed.js";
import type { FeedTrees } from "./feed-trees.js";
import type {
  AcSurgeTap,
  BackupConnection,
  BatteryView,
  BoardCircuit,
  BoardView,
  GridConnection,
  TransformerView,
} from "./plant.js";

/** From a port or unit to the supply, with the way of the board that it lands on. */
export function gridConnection(
  port: Item,
  terminal: Terminal,
  trees: FeedTrees,
  ways: ReadonlyMap<Item, BoardCircuit>,
): GridConnection {
  const tree = trees.reaching(terminal).find(({ root }) => root.item.kind === "supply");
  const down = tree && pathTo(tree, terminal);
  if (!down) return { port, isolators: [] };
  const toSupply = reversed(down);
  const circuit = landingCircuit(toSupply, ways);
  const isolators: Item[] = [];
  for (const device of openingOn(toSupply)) {
    if (device === circuit?.device) break;
    isolators.push(device);
  }
  return { port, toSupply, circuit, isolators };
}

/** The way that a path towards the supply meets first. */
function landingCircuit(toSupply: Path, ways: ReadonlyMap<Item, BoardCircuit>): BoardCircuit | undefined {
  for (const { by } of toSupply.hops) {
    if (by.is === "item" && by.kind === "board") return undefined;
    const circuit = by.is === "item" ? ways.get(by) : undefined;
    if (circuit) return circuit;
  }
  return undefined;
}

/** What goes on without the grid: everything that a backup port reaches with the changeovers thrown. */
export function backupConnection(
  port: Item,
  tree: FeedTree,
  boards: ReadonlyMap<Item, BoardView>,
  ways: ReadonlyMap<Item, BoardCircuit>,
): BackupConnection {
  const items = [...new Set(tree.order.map(({ item }) => item))];
  const fed = new Set(tree.order.flatMap(({ name, item }) => (name === "out" ? [item] : [])));
  const isFedFromHere = (board: Item): boolean =>
    boards.get(board)?.feeds.some(({ root }) => root === tree.root) === true;
  return {
    port,
    boards: items.filter((item) => item.kind === "board" && isFedFromHere(item)),
    circuits: items.flatMap((item) => (fed.has(item) ? (ways.get(item) ?? []) : [])),
    loads: items.filter(({ kind }) => kind === "load"),
    changeovers: items.filter(({ kind }) => kind === "changeover"),
  };
}

/** A battery with the way from its cells to the inverter's battery port. */
export function batteryView(battery: Item, circuit: Circuit): BatteryView {
  const cells = terminalOf(circuit, battery, "cells");
  const tree = cells && feedTree(cells);
  const port = tree?.order.find(({ item }) => item.kind === "battery" && item.parent?.kind === "inverter");
  const path = tree && port && pathTo(tree, port);
  if (path) return { battery, port: port.item, path, isolators: openingOn(path), protection: protectionOn(path) };
  return {
    battery,
    isolators: battery.children.filter((child) => child.row?.through === "opens"),
    protection: battery.children.filter(isProtective),
  };
}

export function acSurgeTap(spd: Item, terminal: Terminal, trees: FeedTrees): AcSurgeTap {
  for (const tree of trees.reaching(terminal)) {
    const path = pathTo(tree, terminal);
    if (!path) continue;
    const last = path.hops[path.hops.length - 1]?.by;
    return { spd, path, run: last?.is === "run" ? last : undefined, protectedBy: protectionOn(path).at(-1) };
  }
  return { spd };
}

/**
 * A current transformer with what it sees, consumers and units fed through the run it is clipped on, and what it does
 * not: those that the supply feeds without passing there.
 */
export function transformerView(transformer: Item, design: Design, trees: FeedTrees): TransformerView {
  const named = wordOf(transformer, "around") ?? textOf(transformer, "around");
  const run = design.runs.find(({ id }) => id === named);
  const reader = wordOf(transformer, "read-by");
  const resolved = reader === undefined ? undefined : design.names.resolve({ path: reader.split(".") });
  const readBy = resolved?.is === "item" ? resolved.item : undefined;
  return { transformer, run, readBy, ...(run ? seenThrough(run, trees.all) : { seen: [], unseen: [] }) };
}

/** What supplies feed through a run, and what they feed past it. */
export function seenThrough(run: Run, trees: readonly FeedTree[]): Pick<TransformerView, "seen" | "unseen"> {
  const seen: Item[] = [];
  const unseen: Item[] = [];
  for (const tree of trees) {
    if (tree.root.item.kind !== "supply") continue;
    const hop = [...tree.arriving.values()].find(({ by }) => by === run);
    if (!hop) continue;
    const passing = new Set(fedThrough(tree, hop.to));
    for (const terminal of tree.order)
      if (takesOrGives(terminal)) (passing.has(terminal) ? seen : unseen).push(terminal.item);
  }
  return { seen, unseen };
}

/** Ends of the wiring that take or give power; a way that only words describe is one. */
function takesOrGives(terminal: Terminal): boolean {
  const { kind } = terminal.item;
  return kind === "load" || kind === "ac" || kind === "generator" || isOnlyInWords(terminal);
}
