/** A stretch of a file to be replaced; nothing is replaced where it is empty. Offsets. */
export interface Change {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What is done to the files by something that is chosen as a whole. */
export interface Edit {
  readonly changes: readonly Change[];
  /** A file that is not there yet, with its whole text. */
  readonly creates?: { readonly uri: string; readonly text: string };
  /** A name that waits for a better one: where it stands once everything is changed. */
  readonly naming?: { readonly uri: string; readonly start: number };
}

/** A text after some changes to it that do not overlap. What is inserted at one place stays in its order. */
export function applied(text: string, changes: readonly Change[]): string {
  const ordered = [...changes].reverse().sort((a, b) => b.start - a.start || b.end - a.end);
  let result = text;
  for (const { start, end, text: own } of ordered) result = result.slice(0, start) + own + result.slice(end);
  return result;
}
