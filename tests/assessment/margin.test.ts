import { expect, test } from "vitest";
import { hasMargin } from "../../language-server/src/assessment/margin.js";
import type { Derived, Given } from "../../language-server/src/physics/figure.js";

const stated = (value: number, dimension: Given["dimension"]): Given => ({
  kind: "given",
  symbol: "X",
  value,
  dimension,
  origin: { kind: "stated", text: "a sheet" },
});
const workedOut = (value: number, dimension: Given["dimension"]): Derived => ({
  kind: "derived",
  symbol: "Y",
  value,
  dimension,
  formula: "2 · X",
  terms: [stated(value / 2, dimension)],
});

test("sizes of a series and counts have no margin, whether they just reach the least one or more", () => {
  expect(hasMargin(stated(6e-6, "area"), stated(6e-6, "area"))).toBe(false);
  expect(hasMargin(stated(10e-6, "area"), stated(6e-6, "area"))).toBe(false);
  expect(hasMargin(stated(1, "number"), stated(1, "number"))).toBe(false);
});

test("a rating chosen to equal what is allowed has no margin; any other has", () => {
  expect(hasMargin(stated(20, "current"), workedOut(20, "current"))).toBe(false);
  expect(hasMargin(stated(19, "current"), stated(20, "current"))).toBe(true);
});

test("what is worked out and just reaches its limit has a margin: none is left of it", () => {
  expect(hasMargin(workedOut(20, "current"), stated(20, "current"))).toBe(true);
});
