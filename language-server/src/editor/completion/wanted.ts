import { type KindRow, kindRow, partRow, propertyRow } from "../../design/schema/index.js";
import { departureRow, readingRow, runRow } from "../../design/schema/wiring.js";
import { begun, continued, type Head, isComplete, isDotted } from "../../language/head.js";
import { type TokenInText, tokensBefore } from "./tokens.js";

/** What a declaration has said before its braces or before the cursor. */
export interface HeadSoFar {
  /** The word it began with: `run`, `part`, or the kind of an item. */
  readonly begins: string;
  readonly kind?: string;
  readonly name?: string;
  readonly part?: string;
  readonly rule?: string;
  /** Segments of the terminal that a run begins at. */
  readonly from?: readonly string[];
}

/** A pair of braces that the cursor is in. */
export interface OpenBlock {
  readonly head: HeadSoFar;
  readonly row?: KindRow;
  /** Names of the properties written in it before the cursor. */
  readonly written: ReadonlySet<string>;
}

/** What may be written at a cursor. */
export interface Wanted {
  /** `value`: of the property `property`; else a state of the sentence. */
  readonly state: Head | "value" | "after-value" | "text" | "nothing";
  readonly head: HeadSoFar;
  readonly blocks: readonly OpenBlock[];
  readonly property?: string;
  /** The last number before the cursor, where its unit could still be written or changed. */
  readonly number?: { readonly image: string; readonly from: number };
  /** Segments before a dot that the cursor stands behind. */
  readonly path: readonly string[];
  /** The half-typed word, and whether it is the first on its line. */
  readonly prefix: string;
  readonly from: number;
  readonly first: boolean;
}

interface Frame {
  readonly head: HeadSoFar;
  readonly row?: KindRow;
  readonly written: Set<string>;
}

const noHead: HeadSoFar = { begins: "" };

/**
 * Reads the text from the start of its chunk to a cursor the way the grammar would, as far as that is needed to know
 * what may come next. It works on half-typed text, where no tree exists.
 */
export function wantedAt(text: string, start: number, cursor: number): Wanted {
  const { tokens, inside } = tokensBefore(text, start, cursor);
  const last = tokens[tokens.length - 1];
  const isPrefix = !inside && last?.token === "word" && last.to === cursor;
  const reader = new Reader(text);
  for (const token of isPrefix ? tokens.slice(0, -1) : tokens) reader.take(token);
  const prefix = isPrefix ? last.image : "";
  const from = isPrefix ? last.from : cursor;
  const first = isPrefix ? last.first : /(^|[\r\n])[ \t]*$/.test(text.slice(start, cursor));
  const found = reader.state();
  if (inside?.is === "comment") return { ...found, state: "nothing", prefix, from, first };
  if (inside?.is === "text")
    return {
      ...found,
      state: "text",
      property: found.property,
      prefix: text.slice(inside.from + 1, cursor),
      from: inside.from + 1,
      first,
    };
  return { ...found, prefix, from, first };
}

class Reader {
  private readonly frames: Frame[] = [];
  private now: Head | "value" | "after-value" = "start";
  private head: HeadSoFar = noHead;
  private property: string | undefined;
  private number: { image: string; from: number } | undefined;
  private path: string[] = [];
  private afterDot = false;

  constructor(private readonly text: string) {}

  state(): Omit<Wanted, "prefix" | "from" | "first"> {
    const { head, property, number, afterDot } = this;
    const blocks = this.frames.map((frame) => ({ head: frame.head, row: frame.row, written: frame.written }));
    return { state: this.now, head, blocks, property, number, path: afterDot ? this.path : [] };
  }

  take(token: TokenInText): void {
    const { now } = this;
    this.number = token.token === "number" ? { image: token.image, from: token.from } : undefined;
    if (token.token === "}") {
      this.close();
      return;
    }
    if (now === "value" || now === "after-value") {
      if (this.takeValue(token)) return;
      this.now = "start";
    }
    this.takeHead(token);
  }

  /** True where the token belongs to a property's value. */
  private takeValue({ token, image }: TokenInText): boolean {
    if (token === "." || token === "other") {
      // `80..550 V`, `INV.pv1`, `[1, 2]`: the value goes on.
      this.now = image === "]" ? "after-value" : "value";
      return true;
    }
    if (this.now === "value") {
      if (token === "{" || token === ":") return false;
      this.now = "after-value";
      return true;
    }
    return (token === "word" && image === "from") || token === "text";
  }

  private takeHead(token: TokenInText): void {
    const state = this.now as Head;
    if (token.token === "." && isDotted(state)) {
      this.afterDot = true;
      return;
    }
    if (this.afterDot) {
      this.afterDot = false;
      if (token.token === "word") {
        this.path.push(token.image);
        return;
      }
    }
    if (this.isPropertyName(token, state)) {
      this.property = token.image;
      this.frames[this.frames.length - 1]?.written.add(token.image);
      this.now = "start";
      this.head = noHead;
      return;
    }
    if (token.token === ":" && this.property !== undefined && state === "start") {
      this.now = "value";
      return;
    }
    this.property = undefined;
    this.advance(state, token);
  }

  private advance(state: Head, token: TokenInText): void {
    const kind = token.token === "}" ? "other" : token.token;
    let next = state === "start" ? undefined : continued(state, kind, token.image);
    if (kind === "{") {
      this.open();
      return;
    }
    if (next === undefined) {
      next = begun(kind, token.image);
      this.head =
        next === "error" ? noHead : { begins: token.image, ...(next === "kind" ? { kind: token.image } : {}) };
    } else {
      this.note(state, next, token.image);
    }
    if (kind === "word") this.path = [token.image];
    this.now = next;
  }

  private note(before: Head, next: Head, word: string): void {
    const { head } = this;
    if (next === "run-to") this.head = { ...head, from: this.path };
    else if (before === "kind" || before === "part" || before === "run") this.head = { ...head, name: word };
    else if (before === "part-is" || before === "way-kind") this.head = { ...head, kind: word };
    else if (next === "item-part") this.head = { ...head, part: word };
    else if (before === "departure" || before === "expect") this.head = { ...head, rule: word };
  }

  private isPropertyName({ token, to }: TokenInText, state: Head): boolean {
    if (token !== "word" || this.frames.length === 0 || !(isComplete(state) || state === "error")) return false;
    return /^[ \t]*:/.test(this.text.slice(to, to + 80));
  }

  private open(): void {
    const outer = this.frames[this.frames.length - 1];
    this.frames.push({ head: this.head, row: rowOf(this.head, outer), written: new Set() });
    this.head = noHead;
    this.property = undefined;
    this.now = "start";
  }

  private close(): void {
    this.frames.pop();
    this.head = noHead;
    this.property = undefined;
    this.afterDot = false;
    this.now = "start";
  }
}

function rowOf(head: HeadSoFar, outer: Frame | undefined): KindRow | undefined {
  switch (head.begins) {
    case "part":
      return head.kind === undefined ? undefined : partRow(head.kind);
    case "run":
      return runRow;
    case "measured":
      return readingRow;
    case "departure":
      return departureRow;
    default:
      return head.kind === undefined ? undefined : kindRow(head.kind, outer && kindOf(outer.head));
  }
}

function kindOf(head: HeadSoFar): string {
  return head.kind ?? head.begins;
}

/** Row of the property whose value the cursor is at. */
export function wantedProperty(wanted: Wanted): ReturnType<typeof propertyRow> {
  const row = wanted.blocks[wanted.blocks.length - 1]?.row;
  return row && wanted.property !== undefined ? propertyRow(row, wanted.property) : undefined;
}
