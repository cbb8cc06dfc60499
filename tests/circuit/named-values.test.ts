import { expect, test } from "vitest";
import { assessText } from "../rules/designs.js";

const problemsOf = (text: string): string[] =>
  assessText(text)
    .problems.filter(({ id }) => id !== "unused-part")
    .map(({ id, message }) => `${id}: ${message}`);

const tails = `part Tails is cable {}
supply GRID
board CU
run W1 from GRID to CU: 3 m of Tails
`;

test("what a current transformer is clipped on must be a run that exists", () => {
  expect(problemsOf(`${tails}ct CT1 { around: W1 }`)).toEqual([]);
  expect(problemsOf(`${tails}ct CT1 { around: W2 }`)).toEqual(["unknown-name: There is no run W2. Did you mean W1?"]);
  expect(problemsOf(`${tails}ct CT1 { around: CU }`)).toEqual([
    "wrong-kind: CU is a board; around names a run. Name a run.",
  ]);
});

test("a way that serves a name must serve something that exists; words need no item", () => {
  const board = (serves: string): string => `supply GRID
part Tails is cable {}
run W1 from GRID to CU: 3 m of Tails
load SHOWER
board CU { way 1: breaker K1 serves ${serves} }`;
  expect(problemsOf(board("SHOWER"))).toEqual([]);
  expect(problemsOf(board('"shower"'))).toEqual([]);
  expect(problemsOf(board("SHOWR"))).toEqual(["unknown-name: There is no item SHOWR. Did you mean SHOWER?"]);
});

test("a device that a way serves is wired by that, and an earth conductor needs no source", () => {
  expect(
    problemsOf(`${tails}electrode E2
earthing {}
run W2 from earthing to E2: 5 m of Tails
board C2 { way 8: breaker K8 serves F3 }
run W3 from GRID to C2: 1 m of Tails
spd F3`),
  ).toEqual([]);
});
