import { lineHeight, smallestText } from "../boxes/box.js";
import type { Wire } from "../diagram.js";
import { textWidth } from "../text-width.js";

export const wireTextSize = smallestText;
/** A figure more in a label leaves everything where it is, as long as it fits into the step. */
const step = 6;

export function labelSize({ label }: Wire): { readonly w: number; readonly h: number } {
  let widest = 0;
  for (const [index, words] of label.entries()) widest = Math.max(widest, textWidth(words, wireTextSize, index === 0));
  return {
    w: Math.ceil((Math.ceil(widest) + 8) / step) * step,
    h: Math.ceil(label.length * (lineHeight - 0.5)) + 2,
  };
}
