/** A stretch of a file to be replaced; nothing is replaced where it is empty. Offsets. */
export interface Change {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A text after some changes to it that do not overlap. */
export function applied(text: string, changes: readonly Change[]): string {
  const ordered = [...changes].sort((a, b) => b.start - a.start);
  let result = text;
  for (const { start, end, text: own } of ordered) result = result.slice(0, start) + own + result.slice(end);
  return result;
}
