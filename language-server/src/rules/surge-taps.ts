import type { PvArray, SurgeTap, Zone } from "../circuit/array.js";
import type { Item } from "../design/things.js";

/** A surge protective device with the array that it protects. */
export interface SurgeSubject {
  readonly tap: SurgeTap;
  readonly array: PvArray;
}

/** Every surge protective device of a zone's d.c. side once, also where two trackers share an array. */
export function* surgeTaps(zone: Zone): Generator<SurgeSubject> {
  const seen = new Set<Item>();
  for (const array of zone.arrays) {
    for (const tap of array.surge) {
      if (seen.has(tap.spd)) continue;
      seen.add(tap.spd);
      yield { tap, array };
    }
  }
}

export const spdOf = ({ tap }: { readonly tap: { readonly spd: Item } }): Item => tap.spd;
