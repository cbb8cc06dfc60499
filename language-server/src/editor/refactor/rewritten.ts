import { absolute, type Place } from "../../place.js";
import { applied, type Change } from "../edits/change.js";

/** A word of the text and what stands there instead. */
export function replaced(place: Place, text: string): Change {
  return { ...absolute(place), text };
}

/** A copy of a stretch of the text with some of its words replaced; the text itself stays. */
export function copyOf(text: string, from: number, to: number, changes: readonly Change[]): string {
  const shifted = changes.map(({ uri, start, end, text: own }) => ({
    uri,
    start: start - from,
    end: end - from,
    text: own,
  }));
  return applied(text.slice(from, to), shifted);
}
