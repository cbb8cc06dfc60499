import type { Zone } from "../circuit/array.js";
import type { Thing } from "../design/things.js";

/** Every declaration that an array zone's checks can read; the rule set and the site are the caller's to add. Declarations keep their identity while their text is unchanged. */
export function zoneSignature(zone: Zone): unknown[] {
  const signature: unknown[] = [];
  const add = (thing: Thing): void => {
    signature.push(thing.declaration);
    if (thing.is === "run") signature.push(thing.cable?.declaration);
    else if (thing.is === "item") {
      signature.push(thing.part?.declaration);
      for (const child of thing.children) add(child);
    }
  };
  if (zone.inverter) add(zone.inverter);
  for (const array of zone.arrays) {
    signature.push(array.id);
    for (const { string, steps } of array.strings) {
      add(string);
      for (const step of steps) add(step);
      signature.push(steps.length);
    }
    for (const { spd, at } of array.surge) {
      add(spd);
      signature.push(at?.id);
    }
    // Every device and run that is joined to the array, each once: a link is met from both its terminals, and a
    // combiner's inside is one link for each of its inputs.
    let last: Thing | undefined;
    for (const terminal of array.terminals) {
      for (const link of terminal.links) {
        if (link.a !== terminal || link.by === last) continue;
        last = link.by;
        add(last);
      }
    }
  }
  return signature;
}
