import type { PvArray, StringPath, Zone } from "../circuit/array.js";
import type { Item } from "../design/things.js";

/** A string that is held against the ones that it is in parallel with. */
export interface ParallelString {
  readonly path: StringPath;
  readonly array: PvArray;
  readonly zone: Zone;
  /** The string that stands for what most of them are; undefined where it has no neighbour. */
  readonly model?: Item;
}

export function* parallelStringsOf(zone: Zone): Generator<ParallelString> {
  for (const array of zone.arrays) {
    const model = array.strings.length > 1 ? mostCommon(array) : undefined;
    for (const path of array.strings) yield { path, array, zone, model };
  }
}

/** The first of the strings that most others are like; a string of which not enough is known is no model. */
function mostCommon(array: PvArray): Item | undefined {
  const alike = new Map<string, { first: Item; many: number }>();
  for (const { string } of array.strings) {
    if (!string.part || Number.isNaN(string.count)) continue;
    const kind = `${string.count} ${string.part.name}`;
    const found = alike.get(kind);
    if (found) found.many++;
    else alike.set(kind, { first: string, many: 1 });
  }
  let best: { first: Item; many: number } | undefined;
  for (const kind of alike.values()) if (!best || kind.many > best.many) best = kind;
  return best?.first ?? array.strings[0]?.string;
}
