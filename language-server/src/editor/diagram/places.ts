import { asWritten } from "../../design/as-written.js";
import type { Design } from "../../design/design.js";
import { findTarget } from "../../design/find-thing.js";
import type { Item } from "../../design/things.js";
import { absolute, type Place } from "../../place.js";
import type { Span } from "../navigate.js";

/** Where something that can be drawn is written. */
export interface WrittenAt {
  /** Id of the item or run. */
  readonly id: string;
  readonly name: Span;
  /** Its whole declaration, or a sentence about it; what is declared inside another lies inside. */
  readonly whole: Span;
}

/**
 * Where each item and run of a design is written, and then where something is said about it, as far as that text still
 * stands.
 */
export function writtenPlaces(design: Design, isLive: (place: Place) => boolean): WrittenAt[] {
  return [...declarations(design), ...sentences(design)].flatMap(({ id, name, whole }) =>
    isLive(whole) ? [{ id, name: absolute(name), whole: absolute(whole) }] : [],
  );
}

interface Written {
  readonly id: string;
  readonly name: Place;
  readonly whole: Place;
}

function declarations({ items, runs }: Design): Written[] {
  return [...items.flatMap(withInside), ...runs].map(({ id, declaration }) => {
    const { namePlace, place } = asWritten(declaration);
    return { id, name: namePlace, whole: place };
  });
}

/** Readings, departures and expectations. */
function sentences(design: Design): Written[] {
  const targets = [
    ...design.readings.map(({ declaration }) => declaration),
    ...design.departures,
    ...design.expectations,
  ];
  return targets.flatMap(({ target, place }) => {
    const found = target && findTarget(design, target.path);
    return found && typeof found !== "string" ? [{ id: found.id, name: target.place, whole: place }] : [];
  });
}

function withInside(item: Item): Item[] {
  return [item, ...item.children.flatMap(withInside)];
}
