import { type Piece, two } from "./pieces.js";

/** One member of a block: a property with its value, or something nested. */
export interface Entry {
  /** Whether a blank line stands before it. */
  readonly isBlank: boolean;
  /** Of a property's name. */
  readonly width?: number;
  /** First piece of its value. */
  readonly value?: Piece;
}

/** Sets the values of properties that follow each other under one another; a blank line or a nested item parts them. */
export function aligned(entries: readonly Entry[]): void {
  let group: Entry[] = [];
  for (const entry of entries) {
    if (entry.width === undefined || entry.isBlank) {
      alignGroup(group);
      group = [];
    }
    if (entry.width !== undefined) group.push(entry);
  }
  alignGroup(group);
}

function alignGroup(group: readonly Entry[]): void {
  const widest = Math.max(...group.map(({ width = 0 }) => width));
  for (const { width = 0, value } of group) if (value) value.gap = { is: "blanks", count: widest - width + 1 };
}

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
