/**
 * Where something is written.
 *
 * A chunk is a stretch of a file that is parsed by itself: one top-level declaration, as a rule. When text before it
 * changes, only `start` moves; everything inside keeps its identity. That is what lets every later stage ask "is this
 * still the same object?" instead of computing again.
 */
export interface Chunk {
  readonly uri: string;
  /** Offset of the chunk in its file, in UTF-16 units. The one mutable field of the whole model. */
  start: number;
}

/** A span inside a chunk: offsets are relative to the chunk's start. */
export interface Place {
  readonly chunk: Chunk;
  readonly from: number;
  readonly to: number;
}

/** Absolute offsets of a place in its file. */
export function absolute(place: Place): { uri: string; start: number; end: number } {
  const { chunk, from, to } = place;
  return { uri: chunk.uri, start: chunk.start + from, end: chunk.start + to };
}
