import { expect, test } from "vitest";
import {
  keepInSight,
  leastScale,
  mostScale,
  pan,
  reveal,
  start,
  type View,
  viewBox,
  fit as whole,
  zoomAt,
} from "../../extension/panel/viewport";

const stage = { width: 600, height: 400 };
const picture = { width: 2000, height: 500 };

/** The point of the stage at which a point of the picture is seen. */
function onStage({ x, y, scale }: View, at: { x: number; y: number }): { x: number; y: number } {
  return { x: (at.x - x) * scale, y: (at.y - y) * scale };
}

test("all of a picture is in the middle of the stage, and touches two of its edges", () => {
  const view = whole(picture, stage);
  expect(onStage(view, { x: 0, y: 250 })).toMatchObject({ x: expect.closeTo(0), y: expect.closeTo(200) });
  expect(onStage(view, { x: 2000, y: 250 })).toMatchObject({ x: expect.closeTo(600), y: expect.closeTo(200) });
});

test("a small picture is seen whole from the start, and is not blown up", () => {
  const small = { width: 100, height: 80 };
  expect(start(small, stage)).toEqual(whole(small, stage));
  expect(whole(small, stage).scale).toBe(1.5);
});

test("a wide picture begins at its left end, as large as its words can be read", () => {
  const view = start(picture, stage);
  expect(view.scale).toBe(0.7);
  expect(onStage(view, { x: 0, y: 250 })).toMatchObject({ x: expect.closeTo(0), y: expect.closeTo(200) });
});

test("a tall picture begins at its upper edge", () => {
  expect(start({ width: 2000, height: 3000 }, stage)).toEqual({ x: 0, y: 0, scale: 0.7 });
});

test("zooming keeps what is under the pointer there, and ends where it ends", () => {
  const view: View = { x: 100, y: 50, scale: 1 };
  const at = { x: 200, y: 150 };
  const nearer = zoomAt(view, 2, at);
  expect(nearer.scale).toBe(2);
  expect(onStage(nearer, { x: 300, y: 200 })).toEqual(at);
  expect(zoomAt(view, 1000, at).scale).toBe(mostScale);
  expect(zoomAt(zoomAt(view, 2, at), 0.5, at)).toEqual(view);
});

test("panning moves by pixels whatever the scale", () => {
  const view: View = { x: 10, y: 20, scale: 2 };
  expect(onStage(pan(view, { x: 30, y: -40 }), { x: 10, y: 20 })).toEqual({ x: -30, y: 40 });
});

test("what is in sight moves nothing; what is not comes just inside", () => {
  const view: View = { x: 0, y: 0, scale: 1 };
  expect(reveal(view, { x: 100, y: 100, width: 50, height: 50 }, stage)).toEqual(view);
  const right = reveal(view, { x: 900, y: 100, width: 50, height: 50 }, stage);
  expect(right.y).toBe(0);
  expect(right.x + stage.width).toBe(950 + 24);
  const left = reveal({ ...view, x: 500 }, { x: 100, y: 100, width: 50, height: 50 }, stage);
  expect(left.x).toBe(100 - 24);
  // Too large to be seen whole: from its corner.
  expect(reveal(view, { x: 700, y: 300, width: 1500, height: 900 }, stage)).toEqual({ x: 676, y: 276, scale: 1 });
});

test("the picture cannot be lost, and all of it can be reached however large it is shown", () => {
  for (const scale of [leastScale, 1, mostScale]) {
    const least = keepInSight({ x: -1e6, y: -1e6, scale }, picture, stage);
    const most = keepInSight({ x: 1e6, y: 1e6, scale }, picture, stage);
    expect(onStage(least, { x: 0, y: 0 }).x).toBeLessThan(stage.width);
    expect(onStage(most, { x: picture.width, y: 0 }).x).toBeGreaterThan(0);
    for (const corner of [
      { x: 0, y: 0 },
      { x: picture.width - 1, y: picture.height - 1 },
    ]) {
      const view = reveal(least, { ...corner, width: 1, height: 1 }, stage);
      expect(keepInSight(view, picture, stage)).toEqual(view);
    }
  }
});

test("the view box has the shape of the stage, so that nothing is stretched", () => {
  expect(viewBox({ x: 1, y: 2, scale: 2 }, stage)).toBe("1.00 2.00 300.00 200.00");
});
