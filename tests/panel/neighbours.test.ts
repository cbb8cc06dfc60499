import { expect, test } from "vitest";
import { type Drawn, neighbour } from "../../extension/panel/neighbours";

/*
 *  S1 ── W1 ── Q1 ── W2 ─┐
 *                         INV ── W5 ── CU (K1 above K2)
 *  S2 ── W3 ── Q2 ── W4 ─┘
 */
const at = (id: string, x: number, y: number): Drawn => ({ id, x: x - 10, y: y - 10, width: 20, height: 20 });
const drawn = [
  ...[at("S1", 0, 0), at("W1", 50, 0), at("Q1", 100, 0), at("W2", 150, 20)],
  ...[at("S2", 0, 200), at("W3", 50, 200), at("Q2", 100, 200), at("W4", 150, 180)],
  ...[at("INV", 200, 100), at("W5", 250, 100), at("CU", 320, 100), at("CU.K1", 310, 70), at("CU.K2", 310, 130)],
];
const joins = [
  { wire: "W1", from: "S1", to: "Q1" },
  { wire: "W2", from: "Q1", to: "INV" },
  { wire: "W3", from: "S2", to: "Q2" },
  { wire: "W4", from: "Q2", to: "INV" },
  { wire: "W5", from: "INV", to: "CU" },
];
const walk = (from: string, ...directions: readonly ("left" | "right" | "up" | "down")[]): string | undefined =>
  directions.reduce<string | undefined>((id, direction) => id && neighbour(drawn, joins, id, direction), from);

test("left and right go along the wires, from thing to wire to thing", () => {
  expect(walk("S1", "right")).toBe("W1");
  expect(walk("S1", "right", "right")).toBe("Q1");
  expect(walk("S1", "right", "right", "right", "right")).toBe("INV");
  expect(walk("INV", "right", "right")).toBe("CU");
  expect(walk("Q2", "left", "left")).toBe("S2");
});

test("of several wires the most nearly level one is taken", () => {
  const lower = drawn.map((each) => (each.id === "W4" ? at("W4", 150, 110) : each));
  expect(neighbour(lower, joins, "INV", "left")).toBe("W4");
});

test("up and down lead to what is nearest there, the insides of a board among it", () => {
  expect(walk("S1", "down")).toBe("S2");
  expect(walk("Q2", "up")).toBe("Q1");
  expect(walk("CU.K1", "down")).toBe("CU");
  expect(walk("CU", "down")).toBe("CU.K2");
});

test("where nothing lies on, the focus stays", () => {
  expect(walk("S1", "left")).toBeUndefined();
  expect(walk("S1", "up")).toBeUndefined();
  expect(neighbour(drawn, joins, "gone", "right")).toBeUndefined();
});

test("a wire whose end is not drawn leads to what lies on", () => {
  const without = drawn.filter(({ id }) => id !== "Q1");
  expect(neighbour(without, joins, "W1", "right")).toBe("W2");
});
