import { expect, test } from "vitest";
import { assessText } from "../rules/designs.js";

/** Strings that reach no inverter yet are followed to where they will be wired on from, not to one of themselves. */
function waysIn(text: string): Record<string, string[]> {
  const { zones } = assessText(text);
  return Object.fromEntries(
    zones.flatMap(({ arrays }) =>
      arrays.flatMap(({ strings }) => strings.map(({ string, steps }) => [string.id, steps.map(({ id }) => id)])),
    ),
  );
}

test("a string by itself is followed to the end of its wiring, past a lead to a surge protective device", () => {
  expect(
    waysIn(`string S1
isolator Q1
spd U1
run W1 from S1 to Q1: 12 m of C
run W2 from Q1 to U1: 0.4 m of C
`),
  ).toEqual({ S1: ["W1", "Q1"] });
});

test("strings of a combiner are each followed through their own fuse to what leaves the box", () => {
  expect(
    waysIn(`string S1
string S2
combiner CB { fuse F1 fuse F2 }
run W1 from S1 to CB.F1: 12 m of C
run W2 from S2 to CB.F2: 12 m of C
`),
  ).toEqual({ S1: ["W1", "CB.F1", "CB"], S2: ["W2", "CB.F2", "CB"] });
});

test("a string without a run has no way at all", () => {
  expect(waysIn("string S1\nstring S2\n")).toEqual({ S1: [], S2: [] });
});
