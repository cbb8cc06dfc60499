import type { Fragment } from "../design/model.js";
import type { ChunkParser } from "./chunk-parser.js";
import { resplit, type SourceChunk } from "./chunks.js";

/** A file as chunks and fragments, kept up to date at the cost of what changed. */
export class SourceFile {
  private current = "";
  private chunks: readonly SourceChunk[] = [];
  private read: readonly Fragment[] = [];

  constructor(
    readonly uri: string,
    private readonly parser: ChunkParser,
  ) {
    this.parseAgain("", true);
  }

  get text(): string {
    return this.current;
  }

  /** One fragment a chunk, in the order of the text. Unchanged chunks keep theirs, as the same object. */
  get fragments(): readonly Fragment[] {
    return this.read;
  }

  /** Takes a new text; true where anything changed. */
  update(text: string): boolean {
    return text !== this.current && this.parseAgain(text, false);
  }

  private parseAgain(text: string, first: boolean): boolean {
    const old = this.read;
    const { chunks, from, to } = resplit(this.uri, { chunks: first ? [] : this.chunks, text: this.current }, text);
    const fresh = chunks.slice(from, to).map((chunk) => this.parser.parse(chunk, text));
    const behind = chunks.length - to;
    this.read = [...old.slice(0, from), ...fresh, ...(behind > 0 ? old.slice(-behind) : [])];
    this.chunks = chunks;
    this.current = text;
    return true;
  }
}
