import type { Design } from "../design/design.js";
import { textOf, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { fedThrough } from "./beyond.js";
import { type Circuit, type Converter, type Terminal, terminalOf } from "./circuit.js";
import { type FeedTree, feedTree, isProtective, openingOn, type Path, pathTo, protectionOn, reversed } from "./feed.js";
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
  trees: readonly FeedTree[],
  ways: ReadonlyMap<Item, BoardCircuit>,
): GridConnection {
  const down = trees
    .filter(({ root }) => root.item.kind === "supply")
    .map((tree) => pathTo(tree, terminal))
    .find((path) => path !== undefined);
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
export function backupConnection(port: Item, tree: FeedTree, boards: readonly BoardView[]): BackupConnection {
  const items = new Set(tree.order.map(({ item }) => item));
  const out = new Set(tree.order.filter(({ name }) => name === "out").map(({ item }) => item));
  return {
    port,
    boards: boards.filter(({ feeds }) => feeds.some(({ root }) => root === tree.root)).map(({ item }) => item),
    circuits: boards.flatMap(({ circuits }) => circuits.filter(({ device }) => out.has(device))),
    loads: [...items].filter(({ kind }) => kind === "load"),
    changeovers: [...items].filter(({ kind }) => kind === "changeover"),
  };
}

/** A battery with the way from its cells to the inverter's battery port. */
export function batteryView(battery: Item, circuit: Circuit, converters: readonly Converter[]): BatteryView {
  const cells = terminalOf(circuit, battery, "cells");
  const tree = cells && feedTree(cells);
  for (const { ports } of converters) {
    for (const { kind, terminal } of ports) {
      const path = kind === "battery" && tree ? pathTo(tree, terminal) : undefined;
      if (path)
        return { battery, port: terminal.item, path, isolators: openingOn(path), protection: protectionOn(path) };
    }
  }
  return {
    battery,
    isolators: battery.children.filter((child) => child.row?.through === "opens"),
    protection: battery.children.filter(isProtective),
  };
}

export function acSurgeTap(spd: Item, terminal: Terminal, trees: readonly FeedTree[]): AcSurgeTap {
  for (const tree of trees) {
    const path = pathTo(tree, terminal);
    if (!path) continue;
    const last = path.hops[path.hops.length - 1]?.by;
    return { spd, path, run: last?.is === "run" ? last : undefined, protectedBy: protectionOn(path).at(-1) };
  }
  return { spd };
}

/** A current transformer, and what it cannot see: consumers and units fed without passing the run it is clipped on. */
export function transformerView(transformer: Item, design: Design, trees: readonly FeedTree[]): TransformerView {
  const named = wordOf(transformer, "around") ?? textOf(transformer, "around");
  const run = design.runs.find(({ id }) => id === named);
  const reader = wordOf(transformer, "read-by");
  const resolved = reader === undefined ? undefined : design.names.resolve({ path: reader.split(".") });
  const readBy = resolved?.is === "item" ? resolved.item : undefined;
  const unseen: Item[] = [];
  for (const tree of trees) {
    if (!run || tree.root.item.kind !== "supply") continue;
    const hop = [...tree.arriving.values()].find(({ by }) => by === run);
    if (!hop) continue;
    const seen = new Set(fedThrough(tree, hop.to));
    for (const terminal of tree.order) if (!seen.has(terminal) && takesOrGives(terminal)) unseen.push(terminal.item);
  }
  return { transformer, run, readBy, unseen };
}

/** Ends of the wiring that take or give power; a way that only words describe is one. */
function takesOrGives({ item, name }: Terminal): boolean {
  if (item.kind === "load" || item.kind === "ac" || item.kind === "generator") return true;
  const { serves } = item.declaration;
  return name === "out" && serves !== undefined && "kind" in serves;
}
