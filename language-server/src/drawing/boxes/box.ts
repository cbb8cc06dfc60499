import type { Shape, TextShape } from "../picture.js";
import { textWidth } from "../text-width.js";

/** A node with its size, before anybody knows where it stands. All coordinates are from its upper left corner. */
export interface Box {
  readonly width: number;
  readonly height: number;
  readonly ports: ReadonlyMap<string, Point>;
  readonly shapes: readonly Shape[];
  /** What must not be covered: symbols and texts, each with what it shows. */
  readonly areas: readonly Area[];
  /** Where the numbers of findings go, by item: the upper right corner of what they are about. */
  readonly corners: ReadonlyMap<string, Point>;
  /** Where the label of its only wire stands, for things that carry it. */
  readonly leadLabel?: Point;
}
export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly what: string;
}

export const nameSize = 11;
export const factSize = 10;
/** No letter of a diagram is smaller. */
export const smallestText = factSize - 0.5;
export const lineHeight = 12.5;
/** Kept free above everything for the numbers of findings: the picture does not move when one comes or goes. */
export const markStrip = 16;

export interface Lines {
  readonly shapes: TextShape[];
  readonly area: Area;
}

/** The first line is a name, the others say what it is. `y` is the upper edge. */
export function lines(
  words: readonly string[],
  x: number,
  y: number,
  anchor: "start" | "middle" | "end",
  firstIsName = true,
): Lines {
  const shapes = words.map((word, index): TextShape => {
    const isName = firstIsName && index === 0;
    return {
      is: "text",
      x,
      y: y + 10 + index * lineHeight,
      text: word,
      size: isName ? nameSize : factSize,
      bold: isName,
      anchor,
      fill: "ink",
    };
  });
  const w = linesWidth(words, firstIsName);
  const left = anchor === "start" ? x : anchor === "end" ? x - w : x - w / 2;
  return { shapes, area: { x: left, y, w, h: words.length * lineHeight, what: words.join(" ") } };
}

export function linesWidth(words: readonly string[], firstIsName = true): number {
  let widest = 0;
  for (const [index, word] of words.entries()) {
    const isName = firstIsName && index === 0;
    widest = Math.max(widest, textWidth(word, isName ? nameSize : factSize, isName));
  }
  return widest;
}

/** Whole units, so that wires meet ports without half steps. */
export function even(value: number): number {
  return Math.ceil(value / 2) * 2;
}
