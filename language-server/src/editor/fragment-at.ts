import type { Fragment } from "../design/model.js";

/** The fragment whose chunk an offset of the file lies in, by bisection: fragments come in the order of the text. */
export function fragmentAt(fragments: readonly Fragment[], offset: number): Fragment | undefined {
  let low = 0;
  let high = fragments.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (fragments[middle]!.chunk.start <= offset) low = middle;
    else high = middle - 1;
  }
  return fragments[low];
}
