import type { Fragment } from "../../design/model.js";
import { type Word, type WordInText, wordsOf } from "../words.js";

/** What a word is, for colours; in the order in which editors are told of them. */
export const tokenSorts = ["type", "class", "variable", "function", "property", "enumMember", "macro"] as const;
export type TokenSort = (typeof tokenSorts)[number];

/** One coloured word: offsets from the start of its chunk. */
export interface Coloured {
  readonly from: number;
  readonly to: number;
  readonly sort: TokenSort;
  readonly declares: boolean;
}

const known = new WeakMap<Fragment, readonly Coloured[]>();

/** The words of a fragment that form alone does not tell apart, in order. The same fragment gives the same answer. */
export function colouredIn(fragment: Fragment): readonly Coloured[] {
  let coloured = known.get(fragment);
  if (!coloured) {
    coloured = fragment.declarations
      .flatMap((declaration) => [...wordsOf(declaration)].flatMap(colouredOf))
      .sort((a, b) => a.from - b.from);
    known.set(fragment, coloured);
  }
  return coloured;
}

function colouredOf({ word, place }: WordInText): Coloured[] {
  const one = (sort: TokenSort | undefined, declares = false): Coloured[] =>
    sort ? [{ from: place.from, to: place.to, sort, declares }] : [];
  switch (word.is) {
    case "name":
      return one(sortOfName(word), true);
    case "kind":
      return one("type");
    case "property":
      return one("property");
    case "rule":
      return one("macro");
    case "value":
      return one(word.property.value?.kind === "word" && word.row?.shape.is === "words" ? "enumMember" : undefined);
    case "mention": {
      const sort = word.role === "part" || word.role === "cable" ? "class" : "variable";
      return word.mention.places.map(({ from, to }) => ({ from, to, sort, declares: false }));
    }
    default:
      return [];
  }
}

function sortOfName({ declaration }: Extract<Word, { is: "name" }>): TokenSort {
  if (declaration.declares === "part") return "class";
  return declaration.declares === "run" ? "function" : "variable";
}
