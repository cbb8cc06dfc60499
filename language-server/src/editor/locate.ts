import type { Declaration, Fragment } from "../design/model.js";
import type { Place } from "../place.js";
import { fragmentAt } from "./fragment-at.js";
import { type Owner, type Word, wordsOf } from "./words.js";

/** What stands at an offset of a file. */
export interface Located {
  readonly fragment: Fragment;
  readonly declaration: Declaration;
  readonly word: Word;
  /** The place of the word; of the one segment for a name with dots. */
  readonly place: Place;
  readonly owners: readonly Owner[];
  /** For a mention: which of its segments. */
  readonly segment: number;
}

/**
 * The word at an offset, its end included, because that is where a cursor stands after typing. Undefined between
 * words, in comments, and in text that cannot be read.
 */
export function locate(fragments: readonly Fragment[], offset: number): Located | undefined {
  const fragment = fragmentAt(fragments, offset);
  if (!fragment) return undefined;
  const within = offset - fragment.chunk.start;
  let touching: Located | undefined;
  for (const declaration of fragment.declarations) {
    for (const { word, place, owners } of wordsOf(declaration)) {
      if (place.chunk !== fragment.chunk || within < place.from || within > place.to) continue;
      const segment = word.is === "mention" ? segmentAt(word.mention.places, within) : 0;
      const exact = word.is === "mention" ? (word.mention.places[segment] ?? place) : place;
      const located: Located = { fragment, declaration, word, place: exact, owners, segment };
      // Of two words that touch (`[1,2]`, `a:b`) the one that begins here is meant.
      if (within < place.to) return located;
      touching ??= located;
    }
  }
  return touching;
}

function segmentAt(places: readonly Place[], within: number): number {
  const index = places.findIndex(({ to }) => within <= to);
  return index < 0 ? places.length - 1 : index;
}
