import type { Chunk } from "../place.js";
import { type ScannedChunk, scanChunk } from "./chunk-scan.js";

/** A chunk with what incremental splitting needs to know about it. */
export interface SourceChunk extends Chunk {
  readonly length: number;
  /** How far the scanner looked beyond the start. */
  readonly seen: number;
  readonly deep?: number;
  readonly unclosed?: number;
}

/** What became of the chunks of a file when its text changed: `[from, to)` of the new list are new objects. */
export interface Splitting {
  readonly chunks: readonly SourceChunk[];
  readonly from: number;
  readonly to: number;
}

/** Splits a whole text. There is always at least one chunk, so that every problem has a place. */
export function split(uri: string, text: string): Splitting {
  return resplit(uri, { chunks: [], text: "" }, text);
}

/**
 * Splits a changed text, keeping every chunk whose text, and all the text its end was decided by, is unchanged. Kept
 * chunks are the same objects; their `start` is moved.
 */
export function resplit(
  uri: string,
  old: { readonly chunks: readonly SourceChunk[]; readonly text: string },
  text: string,
): Splitting {
  const prefix = commonPrefix(old.text, text);
  let kept = 0;
  while (kept < old.chunks.length && old.chunks[kept]!.start + old.chunks[kept]!.seen <= prefix) kept++;
  const moved = text.length - old.text.length;
  const suffixStart = old.text.length - commonSuffix(old.text, text, prefix);

  const last = old.chunks[kept - 1];
  let at = last ? last.start + last.length : 0;
  let behind = kept;
  const fresh: SourceChunk[] = [];
  for (;;) {
    while (behind < old.chunks.length && old.chunks[behind]!.start + moved < at) behind++;
    const candidate = old.chunks[behind];
    // Chunks follow from the text behind their start alone: from an equal start on equal text, all are equal.
    if (candidate && candidate.start + moved === at && candidate.start >= suffixStart && at < text.length) break;
    if (at >= text.length && kept + fresh.length > 0) {
      behind = old.chunks.length;
      break;
    }
    const scanned = scanChunk(text, at);
    fresh.push(chunk(uri, at, scanned));
    at = scanned.end;
  }

  for (let index = behind; index < old.chunks.length; index++) old.chunks[index]!.start += moved;
  const chunks = [...old.chunks.slice(0, kept), ...fresh, ...old.chunks.slice(behind)];
  return { chunks, from: kept, to: kept + fresh.length };
}

function chunk(uri: string, start: number, scanned: ScannedChunk): SourceChunk {
  const { end, ...rest } = scanned;
  return { uri, start, length: end - start, ...rest };
}

/**
 * Length of the longest common beginning. Comparing halves lets the engine compare whole blocks of memory, which is
 * some ten times faster than a loop over characters.
 */
export function commonPrefix(a: string, b: string): number {
  let low = 0;
  let high = Math.min(a.length, b.length);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (a.slice(low, middle) === b.slice(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Length of the longest common end that does not reach into the first `after` characters of either. */
export function commonSuffix(a: string, b: string, after = 0): number {
  let low = 0;
  let high = Math.min(a.length, b.length) - after;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    const same = a.slice(a.length - middle, a.length - low) === b.slice(b.length - middle, b.length - low);
    if (same) low = middle;
    else high = middle - 1;
  }
  return low;
}
