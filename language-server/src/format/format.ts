import type { Fragment } from "../design/model.js";
import { alignTrailing } from "./align.js";
import { reindented, width } from "./comments.js";
import { Layout, step, Unclear } from "./layout.js";
import { lineBreaks, none, type Piece, piecesOf } from "./pieces.js";

/** A stretch of the text to be replaced. Offsets. */
export interface FormatEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Formatted {
  readonly text: string;
  /** What turns the text into the formatted one, in its order; each as short as can be. */
  readonly edits: readonly FormatEdit[];
}

/**
 * A file in the one look of the language. Only blanks, line breaks and the indentation of comments change; a
 * declaration that cannot be read is left as it is. `fragments` are those of exactly this text.
 *
 * Formatting what is formatted changes nothing.
 */
export function format(text: string, fragments: readonly Fragment[]): Formatted {
  const left = new Set<Fragment>(fragments.filter(({ broken }) => broken));
  for (;;) {
    const { pieces, owners } = layOut(text, fragments, left);
    const written = write(text, pieces);
    const changed = firstChanged(written, pieces);
    if (changed === undefined) return { text: written.text, edits: written.edits };
    // The same words in other lines would be other words: that has to be left alone.
    const owner = owners.get(changed);
    if (!owner || left.has(owner)) return { text, edits: [] };
    left.add(owner);
  }
}

interface LaidOut {
  readonly pieces: readonly Piece[];
  readonly owners: ReadonlyMap<Piece, Fragment>;
}

function layOut(text: string, fragments: readonly Fragment[], left: ReadonlySet<Fragment>): LaidOut {
  const pieces: Piece[] = [];
  const owners = new Map<Piece, Fragment>();
  let last = 0;
  for (const [index, fragment] of fragments.entries()) {
    const { start } = fragment.chunk;
    const end = fragments[index + 1]?.chunk.start ?? text.length;
    let own = left.has(fragment) ? undefined : laidOut(text, fragment, start, end, last);
    own ??= rawPieces(text, start, end, last);
    for (const piece of own) {
      owners.set(piece, fragment);
      pieces.push(piece);
      last = piece.to;
    }
  }
  // A file begins in its first line.
  const [first] = pieces;
  if (first?.gap.is === "line") first.gap = none;
  else if (first?.gap.is === "raw-line") first.gap = { ...first.gap, blank: false };
  moveComments(text, pieces);
  alignTrailing(pieces, step);
  return { pieces, owners };
}

function laidOut(text: string, fragment: Fragment, start: number, end: number, last: number): Piece[] | undefined {
  const pieces = piecesOf(text, start, end, last);
  try {
    new Layout(pieces, start).chunk(fragment.declarations);
    return pieces;
  } catch (error) {
    if (error instanceof Unclear) return undefined;
    throw error;
  }
}

/** A stretch that is left as it is, its indentation included. */
function rawPieces(text: string, start: number, end: number, last: number): Piece[] {
  const whole = text.slice(start, end);
  const written = whole.trim();
  if (written === "") return [];
  const from = start + whole.indexOf(written);
  const space = text.slice(last, from);
  const breaks = lineBreaks(space);
  const indent = /[^\r\n]*$/.exec(space)?.[0].replace("\uFEFF", "") ?? "";
  const piece = { is: "raw", from, to: from + written.length, written, image: written, breaks } as const;
  return [{ ...piece, gap: { is: "raw-line", blank: breaks > 1, indent } }];
}

function moveComments(text: string, pieces: readonly Piece[]): void {
  const ending = endingOf(text);
  for (const piece of pieces) {
    const { gap, from, written, is } = piece;
    if (is !== "block-comment") continue;
    const lineStart = Math.max(text.lastIndexOf("\n", from - 1), text.lastIndexOf("\r", from - 1)) + 1;
    const before = text.slice(lineStart, from).replace("\uFEFF", "");
    const isOwnLine = before.trim() === "" && (gap.is === "line" || from === 0 || piece === pieces[0]);
    if (isOwnLine) piece.image = reindented(written, width(before), gap.is === "line" ? gap.steps * step : 0, ending);
  }
}

/** The line ending that a text uses; where it uses several, the longest of them. */
function endingOf(text: string): string {
  if (text.includes("\r\n")) return "\r\n";
  return text.includes("\r") && !text.includes("\n") ? "\r" : "\n";
}

interface Written extends Formatted {
  /** Where each piece begins in the new text. */
  readonly starts: readonly number[];
}

function write(text: string, pieces: readonly Piece[]): Written {
  const ending = endingOf(text);
  const mark = text.startsWith("\uFEFF") ? "\uFEFF" : "";
  const edits: FormatEdit[] = [];
  const out: string[] = [];
  const starts: number[] = [];
  let length = 0;
  let at = 0;
  const put = (start: number, end: number, wanted: string): void => {
    out.push(wanted);
    length += wanted.length;
    const edit = shortened(text, start, end, wanted);
    if (edit) edits.push(edit);
    at = end;
  };
  for (const [index, { gap, from, to, image }] of pieces.entries()) {
    put(at, from, `${index === 0 ? mark : ""}${gapText(gap, ending, index === 0)}`);
    starts.push(length);
    put(from, to, image);
  }
  put(at, text.length, pieces.length > 0 ? ending : mark);
  return { text: out.join(""), edits, starts };
}

function gapText(gap: Piece["gap"], ending: string, isFirst: boolean): string {
  if (gap.is === "blanks") return " ".repeat(gap.count);
  const lines = isFirst ? "" : gap.blank ? ending + ending : ending;
  return lines + (gap.is === "line" ? " ".repeat(gap.steps * step) : gap.indent);
}

/** An edit without what stays the same at its ends; a carriage return is not parted from its line feed. */
function shortened(text: string, start: number, end: number, wanted: string): FormatEdit | undefined {
  const old = text.slice(start, end);
  if (old === wanted) return undefined;
  const shorter = Math.min(old.length, wanted.length);
  let front = 0;
  while (front < shorter && old[front] === wanted[front]) front++;
  if (front > 0 && old[front - 1] === "\r") front--;
  let back = 0;
  while (back < shorter - front && old[old.length - 1 - back] === wanted[wanted.length - 1 - back]) back++;
  if (back > 0 && old[old.length - back] === "\n") back--;
  return { start: start + front, end: end - back, text: wanted.slice(front, wanted.length - back) };
}

/** The first piece that would be read as something else in the new text; undefined where all are what they were. */
function firstChanged({ text, starts }: Written, pieces: readonly Piece[]): Piece | undefined {
  for (let from = 0; from < pieces.length; ) {
    if (pieces[from]!.is === "raw") {
      from++;
      continue;
    }
    let to = from;
    while (to < pieces.length && pieces[to]!.is !== "raw") to++;
    const own = pieces.slice(from, to);
    const start = starts[from]!;
    const read = piecesOf(text, start, starts[to] ?? text.length, start);
    const wrong = own.find(({ image, is }, index) => read[index]?.image !== image || read[index]?.is !== is);
    if (wrong) return wrong;
    if (read.length !== own.length) return own[own.length - 1];
    from = to;
  }
  return undefined;
}
