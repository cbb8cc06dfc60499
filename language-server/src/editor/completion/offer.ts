import type { ThingSort } from "../thing-sort.js";

/** What an offer is; the editor gives each its picture. */
export type OfferSort =
  | "keyword"
  | "kind"
  | "property"
  | "word"
  | "unit"
  | "part"
  | "terminal"
  | "rule"
  | "file"
  | "name"
  | "snippet"
  | ThingSort;

/** One thing that may be written at the cursor. */
export interface Offer {
  readonly label: string;
  readonly sort: OfferSort;
  /** Short text beside the label. */
  readonly detail?: string;
  /** Markdown, shown beside the list. */
  readonly documentation?: string;
  /** What is written; the label where it is absent. */
  readonly insert?: string;
  /** What is written with places to fill in, for editors that know of such. */
  readonly snippet?: string;
  /** What the typed letters are compared with; the label where it is absent. */
  readonly filter?: string;
}

/** A whole declaration with places to fill in, compared by the word that it begins with. */
export function whole(begins: string, shown: string, detail: string, snippet: string): Offer {
  return { label: shown, sort: "snippet", detail, filter: begins, snippet };
}
