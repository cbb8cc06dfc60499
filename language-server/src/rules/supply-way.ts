import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, type Hop, isProtective, type Path, pathTo, reversed } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import type { Item, Run } from "../design/things.js";

/** The way by which the public supply reaches a place while it is there. */
export interface SupplyWay {
  readonly supply: Item;
  readonly hops: readonly Hop[];
  /** The inverter that passes the grid on to its backup port, where the way leads over one. */
  readonly inverter?: Item;
}

/** From the supply to a terminal, over an inverter's pass-through where no conductor leads there; undefined: no way. */
export function supplyWay(plant: Plant, terminal: Terminal): SupplyWay | undefined {
  for (const tree of plant.trees) {
    const path = tree.root.item.kind === "supply" ? pathTo(tree, terminal) : undefined;
    if (path) return { supply: tree.root.item, hops: path.hops };
  }
  for (const tree of plant.trees) {
    const path = tree.root.item.kind === "backup" ? pathTo(tree, terminal) : undefined;
    const before = path && wayToBackup(plant, tree);
    if (path && before) return { ...before, hops: [...before.hops, ...path.hops] };
  }
  return undefined;
}

function wayToBackup(plant: Plant, { root }: FeedTree): SupplyWay | undefined {
  const inverter = root.item.parent;
  const toSupply = plant.inverters.find((view) => view.inverter === inverter)?.grid?.toSupply;
  return toSupply && { supply: toSupply.to.item, hops: reversed(toSupply).hops, inverter };
}

type Hops = Pick<Path, "hops">;

export function runsAlong({ hops }: Hops): Run[] {
  return hops.flatMap(({ by }) => (by.is === "run" ? [by] : []));
}

/** Devices with residual current protection that a way passes, from its start. */
export function residualAlong({ hops }: Hops): Item[] {
  return devicesAlong(hops, ({ kind }) => kind === "rcd" || kind === "rcbo");
}

/** Breakers, RCBOs and fuses that a way passes, from its start. */
export function protectionAlong({ hops }: Hops): Item[] {
  return devicesAlong(hops, isProtective);
}

/** A device lies on a way where its inside is passed; a joint by it at its one end is no passage. */
function devicesAlong(hops: readonly Hop[], wanted: (item: Item) => boolean): Item[] {
  return hops.flatMap(({ by, from, to }) =>
    by.is === "item" && wanted(by) && from.item === by && to.item === by ? [by] : [],
  );
}

/** The tree of a plant that starts at a terminal. */
export function treeAt(plant: Plant, root: Terminal): FeedTree {
  const tree = plant.trees.find((candidate) => candidate.root === root);
  if (!tree) throw new RangeError(`no tree of ${plant.id} starts at ${root.id}`);
  return tree;
}
