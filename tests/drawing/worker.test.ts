import { afterAll, expect, test, vi } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { assessText } from "./drawn.js";

afterAll(() => {
  vi.unstubAllGlobals();
});

test("in a web worker the layout leaves the worker's own messages alone", async () => {
  const onmessage = (): void => {};
  const scope = Object.assign(globalThis, { onmessage });
  // What a worker has, and Node has not.
  vi.stubGlobal("self", scope);
  expect("document" in globalThis).toBe(false);
  const { nodes } = await layout(
    diagramOf(assessText("string S1 is 3 x P\nisolator Q1 {}\nrun W1 from S1 to Q1: 3 m of C")),
  );
  expect(nodes).toHaveLength(2);
  expect(scope.onmessage).toBe(onmessage);
  expect("document" in globalThis).toBe(false);
});
