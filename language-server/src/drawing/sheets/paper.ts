import { smallestText } from "../boxes/box.js";

/** Landscape sheets of ISO 216, in millimetres. */
export const papers = {
  A4: { width: 297, height: 210 },
  A3: { width: 420, height: 297 },
  A2: { width: 594, height: 420 },
  A1: { width: 841, height: 594 },
  A0: { width: 1189, height: 841 },
} as const;
export type Paper = keyof typeof papers;

/** Left free by printers. */
export const paperMargin = 7;
export const millimetre = 96 / 25.4;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** By how much a picture is made smaller to go on a sheet. Nothing is blown up: a small chart stays small. */
export function scaleOn(paper: Paper, { width, height }: Size): number {
  const { width: across, height: down } = papers[paper];
  const room = (length: number): number => (length - 2 * paperMargin) * millimetre;
  return Math.min(room(across) / width, room(down) / height, 1);
}

/**
 * Millimetres, from the top of the tallest letter to the foot of the deepest: what is still read at arm's length, a
 * little over five points. The smallest size of ISO 3098, 1.8 mm for capitals alone, is reached when a sheet at this
 * limit is printed one size of paper larger.
 */
const smallestLetters = 1.8;

export function isReadable(paper: Paper, size: Size): boolean {
  return (scaleOn(paper, size) * smallestText) / millimetre >= smallestLetters;
}

/** The smallest paper, from one on, on which a picture is readable. */
export function paperFor(size: Size, from: Paper): Paper {
  const sizes = Object.keys(papers) as Paper[];
  const larger = sizes.slice(sizes.indexOf(from));
  return larger.find((paper) => isReadable(paper, size)) ?? "A0";
}
