import type { Fragment } from "../design/model.js";

/**
 * What the editor needs from whoever keeps the files. The language server's project fulfils it; so does any test with
 * a handful of texts. Addresses are URIs as strings.
 */
export interface Sources {
  /** Every file known. */
  uris(): Iterable<string>;
  /** The text as it stands; undefined for a file that cannot be read. */
  text(uri: string): string | undefined;
  /** Pieces of a file in the order of its text; the same array as long as the file is unchanged. */
  fragments(uri: string): readonly Fragment[];
  /** The file itself and every file it uses, directly or not, in that order. */
  reach(uri: string): readonly string[];
  /** Files with a `use` line for it. */
  usedBy(uri: string): readonly string[];
}
