import type { FeedTree } from "../circuit/feed.js";
import type { BackupConnection, InverterView, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";

/** What rules of earthing, grid and papers ask of a plant before anything else. */

/** Whether any of the a.c. side is described: the design of an array alone is not asked about boards and supplies. */
export function hasMains({ supplies, boards, generators, lines }: Plant): boolean {
  return supplies.length + boards.length + generators.length + lines.length > 0;
}

/** What goes on without the grid, with the inverter that feeds it. */
export interface Island {
  readonly plant: Plant;
  readonly inverter: Item;
  readonly backup: BackupConnection;
  /** From the backup port, with the changeovers thrown. */
  readonly tree: FeedTree;
}

/** The islands of a plant: backup ports that something is wired to. */
export function islandsOf(plant: Plant): Island[] {
  return plant.inverters.flatMap((view) => {
    const tree = islandTree(plant, view);
    return tree && view.backup ? [{ plant, inverter: view.inverter, backup: view.backup, tree }] : [];
  });
}

function islandTree({ trees }: Plant, { backup }: InverterView): FeedTree | undefined {
  if (!backup || backup.boards.length + backup.circuits.length + backup.loads.length === 0) return undefined;
  return trees.find(({ root }) => root.item === backup.port);
}

/** The item of the design that holds an item: what a name begins with. */
export function outermost(item: Item): Item {
  return item.parent ? outermost(item.parent) : item;
}

/** A thing that has a terminal in an island. */
export function islandMembers({ tree }: Island): ReadonlySet<Item> {
  return new Set(tree.order.map(({ item }) => outermost(item)));
}
