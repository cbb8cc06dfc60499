import { expect, test } from "vitest";
import { readingOrder } from "../../extension/panel/reading.js";

const join = (wire: string, from: string, to: string) => ({ wire, from, to });

test("things come as the text has them, each followed by the wires that lead on from it", () => {
  const joins = [join("W1", "S1", "Q1"), join("W2", "Q1", "INV"), join("W3", "Q1", "F1")];
  const drawn = ["W1", "W2", "W3", "S1", "Q1", "F1", "INV"];
  expect(readingOrder(drawn, joins)).toEqual(["S1", "W1", "Q1", "W2", "W3", "F1", "INV"]);
});

test("a wire from a thing inside a board, or from nowhere that is drawn, is not lost", () => {
  const joins = [join("W1", "gone", "Q1"), join("W2", "CU", "F3")];
  expect(readingOrder(["W1", "W2", "CU", "CU.K8", "F3", "Q1"], joins)).toEqual(["CU", "W2", "CU.K8", "F3", "Q1", "W1"]);
});

test("what is joined but not drawn is not told", () => {
  expect(readingOrder(["S1"], [join("W1", "S1", "Q1")])).toEqual(["S1"]);
});
