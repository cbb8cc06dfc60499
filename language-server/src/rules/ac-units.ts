import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree, Path } from "../circuit/feed.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";

/** A grid port or a generating unit with its way to the supply. */
export interface FeedingUnit {
  readonly plant: Plant;
  /** What people know it by: the inverter, or the generating unit. */
  readonly thing: Item;
  /** The `ac` block, or the generating unit: it states the currents. */
  readonly item: Item;
  /** From the unit to the supply; undefined where no supply is reached. */
  readonly toSupply?: Path;
  /** The supply's tree that reaches it. */
  readonly tree?: FeedTree;
  readonly terminal?: Terminal;
  /** The way on which it lands at the first board. */
  readonly circuit?: BoardCircuit;
  /** Opening devices before the first board's own, from the unit. */
  readonly isolators: readonly Item[];
}

/** Units that feed in beside the supply. A port that nothing is wired to is none. */
export function* feedingUnits(plant: Plant): Generator<FeedingUnit> {
  const wired = new Set<Item>();
  for (const { run } of plant.lines) for (const end of [run.from, run.to]) if (end) wired.add(end.item);
  for (const { inverter, grid } of plant.inverters)
    if (grid && wired.has(grid.port)) yield unitOf(plant, inverter, grid.port, grid);
  for (const view of plant.generators)
    if (wired.has(view.generator)) yield unitOf(plant, view.generator, view.generator, view);
}

function unitOf(
  plant: Plant,
  thing: Item,
  item: Item,
  { toSupply, circuit }: { readonly toSupply?: Path; readonly circuit?: BoardCircuit },
): FeedingUnit {
  if (!toSupply) return { plant, thing, item, isolators: [] };
  const { from: terminal, to: root } = toSupply;
  const tree = plant.trees.find((candidate) => candidate.root === root);
  return { plant, thing, item, toSupply, tree, terminal, circuit, isolators: isolatorsOn(toSupply, circuit) };
}

/** What opens on the way up to the first board: a board's own devices are not beside the unit. */
function isolatorsOn({ hops }: Path, circuit: BoardCircuit | undefined): Item[] {
  const found = new Set<Item>();
  for (const { by, link } of hops) {
    if (by.is === "run") continue;
    if (by.kind === "board" || by === circuit?.device) break;
    if (link.opens) found.add(by);
  }
  return [...found];
}
