import { asWritten } from "../../design/as-written.js";
import type { Design } from "../../design/design.js";
import type { Item } from "../../design/things.js";
import { absolute, type Place } from "../../place.js";
import type { Span } from "../navigate.js";

/** Where something that can be drawn is written. */
export interface WrittenAt {
  /** Id of the item or run. */
  readonly id: string;
  readonly name: Span;
  /** Its whole declaration; what is declared inside another lies inside. */
  readonly whole: Span;
}

/** Where each item and run of a design is written, as far as that text still stands. */
export function writtenPlaces(design: Design, isLive: (place: Place) => boolean): WrittenAt[] {
  return [...design.items.flatMap(withInside), ...design.runs].flatMap(({ id, declaration }) => {
    const { namePlace, place } = asWritten(declaration);
    return isLive(place) ? [{ id, name: absolute(namePlace), whole: absolute(place) }] : [];
  });
}

function withInside(item: Item): Item[] {
  return [item, ...item.children.flatMap(withInside)];
}
