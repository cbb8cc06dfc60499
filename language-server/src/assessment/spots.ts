import { bearerOf, findProperty, isWrittenHere } from "../design/things.js";
import type { Place } from "../place.js";
import type { Spot } from "../rules/rule.js";

/**
 * Where a finding is shown: at its spot, but never on a part's sheet. What a sheet says holds wherever the part is used;
 * what does not hold is one design's use of it.
 */
export function placeOfFinding(spot: Spot): Place {
  const { thing, property } = spot;
  const found = property !== undefined && thing.is === "item" && findProperty(thing, property)?.property;
  if (!found || (isWrittenHere(thing) && thing.declaration.properties.includes(found))) return placeOf(spot);
  return placeOf({ thing: bearerOf(thing), word: "part" });
}

/**
 * Where a spot is written: the value of its property, the word of its sentence, or the thing's name; for what a part's
 * sheet brings, the word that names the part.
 */
export function placeOf(spot: Spot): Place {
  const { thing, property, word } = spot;
  if (property !== undefined) {
    const found = findProperty(thing, property);
    if (found) return found.property.valuePlace;
  }
  if (thing.is === "item") {
    // On a part's sheet there is nothing to choose: the choice is the part that the design names.
    const bearer = bearerOf(thing);
    if (bearer !== thing) return placeOf({ thing: bearer, word: "part" });
  }
  const { declaration } = thing;
  if (declaration.declares === "item") {
    if (word === "count" && declaration.count) return declaration.count.place;
    if (word === "part" && declaration.part) return declaration.part.place;
  }
  if (declaration.declares === "run") {
    if (word === "length" && declaration.length) return declaration.length.place;
    if (word === "cable" && declaration.cable) return declaration.cable.place;
    if (word === "from" && declaration.from) return declaration.from.place;
    if (word === "to" && declaration.to) return declaration.to.place;
  }
  return declaration.namePlace;
}
