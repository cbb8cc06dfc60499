import { fedThrough } from "../circuit/beyond.js";
import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, itemsOn, pathTo } from "../circuit/feed.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { listed } from "./phrases.js";

/** Circuits that a device feeds besides the one of a unit. Those of surge protective devices carry nothing. */
export function circuitsBehind(plant: Plant, tree: FeedTree, device: Item, unit: Terminal): BoardCircuit[] {
  const path = pathTo(tree, unit);
  const out = path?.hops.find((hop) => hop.by === device && hop.to.item === device)?.to;
  if (!path || !out) return [];
  const own = new Set(itemsOn(path));
  const fed = new Set(fedThrough(tree, out).map(({ item }) => item));
  return plant.boards.flatMap(({ circuits }) =>
    circuits.filter((circuit) => fed.has(circuit.device) && !own.has(circuit.device) && !isForSurge(circuit)),
  );
}

function isForSurge({ beyond }: BoardCircuit): boolean {
  return beyond.surge.length > 0 && beyond.loads.length + beyond.boards.length === 0;
}

const named = 3;

/** What circuits serve, in words: `"kitchen sockets" and SHOWER`. */
export function circuitText(circuits: readonly BoardCircuit[]): string {
  const names = circuits.map(({ serves, servesText, device }) =>
    serves ? serves.id : servesText === undefined ? device.id : `"${servesText}"`,
  );
  const more = names.length - named;
  return more > 0 ? `${names.slice(0, named).join(", ")} and ${more} more` : listed(names);
}
