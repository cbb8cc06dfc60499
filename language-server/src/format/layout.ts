import type { Block, Declaration, ItemDeclaration, Property } from "../design/model.js";
import { aligned, type Entry } from "./align.js";
import { joint } from "./joints.js";
import { isComment, one, type Piece, two } from "./pieces.js";

/** No line of the formatter's own making is longer. */
export const widest = 120;
export const step = 4;

/** Thrown where the pieces and the declarations do not tell the same: the piece of text is then left as it is. */
export class Unclear {}

type Member = Property | ItemDeclaration;

/** Decides what stands before each piece of one chunk. */
export class Layout {
  private at = 0;

  constructor(
    private readonly pieces: readonly Piece[],
    /** Offset of the chunk, to which places are relative. */
    private readonly start: number,
  ) {}

  /** Lays out a chunk's declarations, and the comments before, between and behind them. */
  chunk(declarations: readonly Declaration[]): void {
    for (const declaration of [...declarations].sort((a, b) => a.place.from - b.place.from)) {
      this.comments(this.start + declaration.place.from, 0, true);
      this.newLine(0, true);
      this.sentence(declaration.place, "properties" in declaration ? declaration : undefined, 0);
    }
    this.comments(Number.POSITIVE_INFINITY, 0, true);
    if (this.at < this.pieces.length) throw new Unclear();
  }

  private get piece(): Piece | undefined {
    return this.pieces[this.at];
  }

  private newLine(steps: number, mayBlank: boolean): void {
    const { piece } = this;
    if (!piece) throw new Unclear();
    piece.gap = { is: "line", blank: mayBlank && piece.breaks > 1, steps };
  }

  /** Comments up to an offset: behind the line they stand on, or on lines of their own. */
  private comments(until: number, steps: number, mayBlank: boolean): void {
    let first = !mayBlank;
    for (let { piece } = this; piece && isComment(piece) && piece.from < until; { piece } = this) {
      const before = this.pieces[this.at - 1];
      // A doc comment belongs to what comes after it, wherever it stands.
      const isDoc = piece.written.startsWith("/**") && piece.written !== "/**/";
      const isBehind = piece.breaks === 0 && before !== undefined && before.is !== "line-comment" && !isDoc;
      if (isBehind) piece.gap = piece.is === "line-comment" ? two : one;
      else this.newLine(steps, !first);
      first &&= isBehind;
      this.at++;
    }
  }

  /** A head and its block. The gap before its first piece is the caller's. */
  private sentence(
    place: { readonly from: number; readonly to: number },
    block: Block | undefined,
    steps: number,
    isFlat = false,
  ): void {
    const body = block?.bodyPlace;
    this.words(this.start + (body ? body.from : place.to), steps);
    if (!block || !body) return;
    if (this.piece?.written !== "{" || this.piece.from !== this.start + body.from) throw new Unclear();
    this.piece.gap = this.pieces[this.at - 1]?.is === "line-comment" ? { is: "line", blank: false, steps } : one;
    this.at++;
    const open = this.at;
    const end = this.start + body.to;
    if (isFlat || this.canBeFlat(end)) {
      this.flat(block, end);
      if (isFlat || this.column(this.at - 1) <= widest) return;
      this.at = open;
    }
    this.tall(block, end, steps);
  }

  /** Pieces of one sentence up to an offset; the first one's gap is set already. */
  private words(until: number, steps: number): void {
    for (let isFirst = true; this.piece && this.piece.from < until; isFirst = false) {
      const { piece } = this;
      if (!isFirst) piece.gap = joint(this.pieces[this.at - 1]!, piece, steps);
      if (piece.to > until && !isComment(piece)) throw new Unclear();
      this.at++;
    }
  }

  private canBeFlat(end: number): boolean {
    for (let index = this.at; index < this.pieces.length; index++) {
      const piece = this.pieces[index]!;
      if (piece.from >= end) break;
      if (piece.breaks > 0 || piece.is === "line-comment" || /[\r\n]/.test(piece.written)) return false;
      if (piece.is === "block-comment" && piece.written.startsWith("/**")) return false;
    }
    return true;
  }

  /** `{ tilt: 35 deg  azimuth: 270 deg }` */
  private flat(block: Block, end: number): void {
    const open = this.at;
    for (const member of membersOf(block)) {
      while (this.piece && isComment(this.piece) && this.piece.from < this.start + member.place.from) {
        this.piece.gap = one;
        this.at++;
      }
      if (!this.piece) throw new Unclear();
      this.piece.gap = this.at === open || isComment(this.pieces[this.at - 1]!) ? one : two;
      this.member(member, 0, true);
    }
    while (this.piece && isComment(this.piece) && this.piece.from < end - 1) {
      this.piece.gap = one;
      this.at++;
    }
    this.close(end);
    this.pieces[this.at - 1]!.gap = this.at - 1 === open ? { is: "blanks", count: 0 } : one;
  }

  /** One member a line, the values of neighbours below each other. */
  private tall(block: Block, end: number, steps: number): void {
    const inner = steps + 1;
    const entries: Entry[] = [];
    let isFirst = true;
    for (const member of membersOf(block)) {
      const from = this.at;
      this.comments(this.start + member.place.from, inner, !isFirst);
      const isUnderComment = this.pieces.slice(from, this.at).some(({ gap }) => gap.is === "line");
      this.newLine(inner, !isFirst || isUnderComment);
      const isBlank = this.pieces.slice(from, this.at + 1).some(({ gap }) => gap.is === "line" && gap.blank);
      const first = this.at;
      this.member(member, inner, false);
      entries.push(this.entry(member, first, isBlank));
      isFirst = false;
    }
    this.comments(end - 1, inner, !isFirst);
    aligned(entries);
    this.close(end);
    this.pieces[this.at - 1]!.gap =
      entries.length === 0 && this.isEmpty() ? { is: "blanks", count: 0 } : { is: "line", blank: false, steps };
  }

  /** Whether nothing stands between the brace just closed and its opening one. */
  private isEmpty(): boolean {
    return this.pieces[this.at - 2]?.written === "{";
  }

  private member(member: Member, steps: number, isFlat: boolean): void {
    if (this.piece?.from !== this.start + member.place.from) throw new Unclear();
    if ("nested" in member) this.sentence(member.place, member, steps, isFlat);
    else this.words(this.start + member.place.to, steps);
  }

  private entry(member: Member, first: number, isBlank: boolean): Entry {
    const [name, colon, value] = this.pieces.slice(first, Math.min(first + 3, this.at));
    if ("nested" in member || !name || colon?.written !== ":") return { isBlank };
    return { isBlank, width: name.image.length, value: value && !isComment(value) ? value : undefined };
  }

  private close(end: number): void {
    if (this.piece?.written !== "}" || this.piece.to !== end) throw new Unclear();
    this.at++;
  }

  /** The column behind a piece, counted from the last line break before it. */
  private column(index: number): number {
    let column = 0;
    for (let at = index; at >= 0; at--) {
      const { image, gap } = this.pieces[at]!;
      column += image.length;
      if (gap.is === "line") return column + gap.steps * step;
      if (gap.is === "blanks") column += gap.count;
    }
    return column;
  }
}

function membersOf({ properties, nested }: Block): Member[] {
  return [...properties, ...nested].sort((a, b) => a.place.from - b.place.from);
}
