import { describe, expect, test } from "vitest";
import { chartsOf, pagesOf } from "../../language-server/src/drawing/charts/charts.js";
import type { GroupShape, Shape } from "../../language-server/src/drawing/picture.js";
import { assessed, designs } from "../examples/examples.js";
import { type PlacedText, texts } from "./texts.js";

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Letters reach so far above and below their base line. */
function overlap(a: PlacedText, b: PlacedText): boolean {
  const [above, below] = [0.72, 0.2];
  return (
    a.x < b.right - 1 &&
    b.x < a.right - 1 &&
    a.y - above * a.size < b.y + below * b.size - 1 &&
    b.y - above * b.size < a.y + below * a.size - 1
  );
}

function groups(shapes: readonly Shape[], sort: string): GroupShape[] {
  return shapes.flatMap((shape) =>
    shape.is === "group" ? [...(shape.sort === sort ? [shape] : []), ...groups(shape.shapes, sort)] : [],
  );
}

/** Points along every line, so close that no letter fits between two. */
function pointsOf(shapes: readonly Shape[]): Spot[] {
  return shapes.flatMap((shape) => {
    if (shape.is === "group") return pointsOf(shape.shapes);
    if (shape.is !== "path") return [];
    const ends = [...shape.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({
      x: Number(x),
      y: Number(y),
    }));
    return ends.slice(1).flatMap((to, index) => {
      const from = ends[index]!;
      const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 3) + 1;
      return Array.from({ length: steps + 1 }, (_, step) => ({
        x: from.x + ((to.x - from.x) * step) / steps,
        y: from.y + ((to.y - from.y) * step) / steps,
      }));
    });
  });
}

describe.each(designs)("charts of %s", (path) => {
  const pictures = chartsOf(assessed(path)).flatMap((chart) =>
    [chart.picture(), ...pagesOf(chart)].map((picture) => [chart.name, picture] as const),
  );

  test("no text lies on another, and none leaves the picture", () => {
    for (const [name, { shapes, width, height }] of pictures) {
      const all = texts(shapes);
      for (const [index, a] of all.entries()) {
        expect(a.x >= 0 && a.right <= width && a.y - a.size >= 0 && a.y <= height - 4, `${name}: ${a.words}`).toBe(
          true,
        );
        for (const b of all.slice(index + 1))
          expect(overlap(a, b), `${name}: "${a.words}" and "${b.words}"`).toBe(false);
      }
    }
  });

  test("curves stay within the frame, and the words of bands off the curves", () => {
    for (const [name, { shapes }] of pictures) {
      const frames = shapes.filter((shape) => shape.is === "rect" && shape.stroke === "ink");
      const curves = groups(shapes, "curve").flatMap((curve) => pointsOf([curve]));
      if (curves.length === 0) continue;
      const [frame] = frames;
      if (frame?.is !== "rect") throw new Error(`${name} has no frame`);
      for (const { x, y } of curves)
        expect(x >= frame.x - 1 && x <= frame.x + frame.w + 1 && y >= frame.y - 1 && y <= frame.y + frame.h + 1).toBe(
          true,
        );
      for (const words of groups(shapes, "band").flatMap((band) => texts([band])))
        for (const { x, y } of curves)
          expect(x > words.x && x < words.right && y < words.y + 1 && y > words.y - 7, `${name}: ${words.words}`).toBe(
            false,
          );
    }
  });
});
