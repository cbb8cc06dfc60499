import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Line, Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { protectionAlong, supplyWay } from "./supply-way.js";

/** A device as the energy of a tree's root passes it. */
export interface PassedDevice {
  readonly device: Item;
  readonly tree: FeedTree;
  /** Its terminal on the root's side, and the other one. */
  readonly before: Terminal;
  readonly after: Terminal;
}

/** Devices of a plant that a.c. passes, each once, as the first tree that reaches it sees it. */
export function* passedDevices(plant: Plant, wanted: (item: Item) => boolean): Generator<PassedDevice> {
  const seen = new Set<Item>();
  for (const tree of plant.trees) yield* passedIn(tree, wanted, seen);
}

/** The same in one tree; what is `seen` is left out, and what is found is added to it. */
export function* passedIn(
  tree: FeedTree,
  wanted: (item: Item) => boolean,
  seen: Set<Item> = new Set(),
): Generator<PassedDevice> {
  for (const { by, from, to } of tree.arriving.values()) {
    if (by.is !== "item" || from.item !== by || to.item !== by || seen.has(by) || !wanted(by)) continue;
    seen.add(by);
    yield { device: by, tree, before: from, after: to };
  }
}

/**
 * Runs by the device that protects them next: for those between a backup port and its first device, the one ahead of the
 * inverter that passes the grid on. Those that were there before, and feed nothing new, are left out.
 */
export function linesByDevice(plant: Plant): Map<Item, Line[]> {
  const found = new Map<Item, Line[]>();
  for (const line of plant.lines) {
    const protectedBy = line.protectedBy ?? aheadOfInverter(plant, line.root);
    if (!protectedBy || isAsFound(line)) continue;
    const own = found.get(protectedBy);
    if (own) own.push(line);
    else found.set(protectedBy, [line]);
  }
  return found;
}

/** What protects a backup port while the grid is passed on to it: the last device ahead of its inverter. */
export function aheadOfInverter(plant: Plant, root: Terminal): Item | undefined {
  const way = root.item.kind === "backup" ? supplyWay(plant, root) : undefined;
  return way && protectionAlong(way).at(-1);
}

/** A run that was there before and carries nothing of what is added. */
export function isAsFound(line: Line): boolean {
  return flagOf(line.run, "existing") === true && !feedsBack(line);
}

/** Whether something beyond a run feeds back through it. */
export function feedsBack({ beyond }: Line): boolean {
  return beyond.gridPorts.length + beyond.generators.length > 0;
}

/** The lead of a surge protective device carries no load and is looked at by rules of its own. */
export function isSurgeLead({ beyond }: Line): boolean {
  const { surge, loads, boards, gridPorts, generators, backupPorts } = beyond;
  return (
    surge.length > 0 && loads.length + boards.length + gridPorts.length + generators.length + backupPorts.length === 0
  );
}

/** From the supply to the first protective device or board: what they carry is a matter of the board. */
export function isTails({ root, protectedBy, beyond }: Line): boolean {
  return root.item.kind === "supply" && !protectedBy && beyond.boards.length > 0;
}

/** Loads that are part of the work, by the device of their way. */
export function newLoadsByDevice(plant: Plant): Map<Item, Item[]> {
  const found = new Map<Item, Item[]>();
  for (const { circuits } of plant.boards)
    for (const { device, beyond } of circuits) {
      const loads = beyond.loads.filter((load) => flagOf(load, "existing") !== true);
      if (loads.length > 0) found.set(device, loads);
    }
  return found;
}
