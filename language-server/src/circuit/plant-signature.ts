import type { Item, Thing } from "../design/things.js";
import type { Path } from "./feed.js";
import type { Plant } from "./plant.js";

/** See `Plant.signature`: declarations keep their identity while their text is unchanged, so identity is enough. */
export function plantSignature(plant: Omit<Plant, "signature">, links: readonly Item[]): unknown[] {
  const signature: unknown[] = [plant.id];
  const add = (thing: Thing | undefined): void => {
    if (!thing) return;
    signature.push(thing.declaration);
    if (thing.is === "run") signature.push(thing.cable?.declaration);
    else if (thing.is === "item") {
      signature.push(thing.part?.declaration);
      for (const child of thing.children) add(child);
    }
  };
  const addPath = (path: Path | undefined): void => {
    for (const { by } of path?.hops ?? []) add(by);
  };
  const inTrees = new Set<Thing>();
  for (const { order, arriving } of plant.trees) {
    for (const terminal of order) {
      inTrees.add(outermost(terminal.item));
      const by = arriving.get(terminal)?.by;
      if (by?.is === "run") inTrees.add(by);
    }
  }
  for (const thing of inTrees) add(thing);
  for (const { inverter } of plant.inverters) if (!inTrees.has(inverter)) add(inverter);
  // Also those that stand on a d.c. side, where no tree leads.
  for (const item of [...plant.changeovers, ...plant.meters]) if (!inTrees.has(outermost(item))) add(item);
  for (const { battery, path } of plant.batteries) {
    add(battery);
    addPath(path);
  }
  for (const { transformer, run } of plant.transformers) {
    add(transformer);
    add(run);
  }
  for (const link of links) add(link);
  for (const electrode of plant.electrodes) add(electrode);
  add(plant.earthing);
  return signature;
}

/** The declaration that holds an item: what is nested in it is added with it. */
function outermost(item: Item): Item {
  return item.parent ? outermost(item.parent) : item;
}
