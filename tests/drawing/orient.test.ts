import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { assessText } from "./drawn.js";

const parts = `part M is module { open-circuit-voltage: 38.9 V }
part Switch is isolator { poles: 2 }
`;

/** The wires from left to right, as they are drawn. */
function wires(text: string): string[] {
  return diagramOf(assessText(`${parts}${text}`)).wires.map(({ from, to }) => `${from.port} – ${to.port}`);
}

describe("a piece without inverter or supply runs from its source to the right", () => {
  test.each([
    ["a string", "string S1 is 9 x M\nisolator Q1 is Switch\nrun W1 from S1 to Q1: 3 m", ["S1.out – Q1.in"]],
    ["a battery", "battery B {}\nisolator Q1 is Switch\nrun W1 from B to Q1: 3 m", ["B.out – Q1.in"]],
    [
      "a string, with a surge protective device on the way",
      "string S1 is 9 x M\nisolator Q1 is Switch\nspd F1 {}\nrun W1 from S1 to Q1: 3 m\nrun W2 from Q1 to F1: 1 m",
      ["S1.out – Q1.in", "Q1.out – F1.in"],
    ],
    [
      "two strings into one isolator",
      "string S1 is 9 x M\nstring S2 is 9 x M\nisolator Q1 is Switch\nrun W1 from S1 to Q1: 3 m\nrun W2 from S2 to Q1.in: 3 m",
      ["S1.out – Q1.in", "S2.out – Q1.in"],
    ],
    [
      "devices alone, from the first of the text",
      "isolator Q1 is Switch\nisolator Q2 is Switch\nrun W1 from Q1 to Q2: 3 m",
      ["Q1.out – Q2.in"],
    ],
  ])("%s", (_, text, drawn) => {
    expect(wires(text)).toEqual(drawn);
  });
});

test("with a supply it runs towards that", () => {
  const text =
    "supply GRID {}\nisolator Q1 is Switch\nrun W1 from GRID to Q1: 3 m\nload L {}\nrun W2 from Q1 to L: 2 m";
  expect(wires(text)).toEqual(["Q1.in – GRID.out", "L.in – Q1.out"]);
});
