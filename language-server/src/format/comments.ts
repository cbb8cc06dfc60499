/**
 * A comment of several lines moved from one column to another. Lines that begin with a star are set under the first
 * star; others keep their distance from the first line.
 */
export function reindented(comment: string, oldColumn: number, newColumn: number, ending: string): string {
  const [first = "", ...rest] = comment.split(/\r\n|\r|\n/);
  if (rest.length === 0) return comment;
  const moved = rest.map((line) => {
    const text = line.trimStart();
    if (text === "") return "";
    if (text.startsWith("*")) return `${" ".repeat(newColumn + 1)}${text}`;
    const indent = width(line.slice(0, line.length - text.length));
    return `${" ".repeat(Math.max(0, indent + newColumn - oldColumn))}${text}`;
  });
  return [first, ...moved].join(ending);
}

/** Columns that blanks take; a tab goes to the next fourth. */
export function width(blanks: string): number {
  let columns = 0;
  for (const sign of blanks) columns = sign === "\t" ? columns + 4 - (columns % 4) : columns + 1;
  return columns;
}
