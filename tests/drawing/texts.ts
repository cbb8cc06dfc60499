import type { Shape } from "../../language-server/src/drawing/picture.js";
import { textWidth } from "../../language-server/src/drawing/text-width.js";

export interface PlacedText {
  readonly x: number;
  readonly right: number;
  /** The base line. */
  readonly y: number;
  readonly size: number;
  readonly words: string;
}

/** Every text with its ends, in the picture's own units. */
export function texts(shapes: readonly Shape[], dx = 0, dy = 0): PlacedText[] {
  return shapes.flatMap((shape) => {
    if (shape.is === "group") return texts(shape.shapes, dx + (shape.x ?? 0), dy + (shape.y ?? 0));
    if (shape.is !== "text" || shape.text === "") return [];
    const { size, text: words } = shape;
    const width = textWidth(words, size, shape.bold);
    const x = dx + shape.x - (shape.anchor === "end" ? width : shape.anchor === "middle" ? width / 2 : 0);
    return [{ x, right: x + width, y: dy + shape.y, size, words }];
  });
}
