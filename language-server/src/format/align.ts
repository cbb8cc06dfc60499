import { type Piece, two } from "./pieces.js";

interface Trailing {
  readonly piece: Piece;
  readonly line: number;
  /** Column behind what it stands behind. */
  readonly column: number;
}

/** Sets comments at the ends of lines that follow each other under one another. */
export function alignTrailing(pieces: readonly Piece[], step: number): void {
  let line = 0;
  let column = 0;
  const trailing: Trailing[] = [];
  for (const piece of pieces) {
    const { gap, image } = piece;
    if (gap.is === "blanks") {
      if (piece.is === "line-comment" && piece !== pieces[0]) trailing.push({ piece, line, column });
      column += gap.count;
    } else {
      line += gap.blank ? 2 : 1;
      column = gap.is === "line" ? gap.steps * step : gap.indent.length;
    }
    const lines = image.split(/\r\n|\r|\n/);
    line += lines.length - 1;
    column = lines.length > 1 ? lines[lines.length - 1]!.length : column + image.length;
  }
  let from = 0;
  for (let index = 1; index <= trailing.length; index++) {
    if (trailing[index]?.line === trailing[index - 1]!.line + 1) continue;
    under(trailing.slice(from, index));
    from = index;
  }
}

function under(group: readonly Trailing[]): void {
  const widest = Math.max(...group.map(({ column }) => column));
  for (const { piece, column } of group)
    piece.gap = { is: "blanks", count: widest - column + (two as { count: number }).count };
}
