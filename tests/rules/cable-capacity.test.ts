import { expect, test } from "vitest";
import { capacityOf } from "../../language-server/src/rules/cable-capacity.js";
import { NotKnown } from "../../language-server/src/rules/judge.js";
import { assessText } from "./designs.js";

/** What a cable carries as it is laid: the words of a run lead to a column of the rule set and its factors. */

function capacity(rules: "gb" | "iec", cable: string, run: string, loadedConductors: 2 | 3 = 2): number {
  const text = `site "Barn" { rules: ${rules} }
part C is cable { ${cable}  conductor-class: class-2 }
terminal-block A
terminal-block B
run W1 from A to B: 10 m of C { ${run}  ambient: 30 degC }
`;
  const { design, judge } = assessText(text);
  const [laid] = design.runs;
  return capacityOf(laid!, laid!.cable!, judge, loadedConductors).current.value;
}

const multicore = "conductor-area: 10 mm2  type: multicore  insulation: thermoplastic-70";
const lead = (area: number) => `conductor-area: ${area} mm2  type: battery-lead  insulation: thermosetting-90`;

// Cells of BS 7671 Tables 4D2A and 4E1A, which IEC 60364-5-52 Annex B shares.
test.each(["gb", "iec"] as const)("%s: two and three loaded conductors have columns of their own", (rules) => {
  expect(capacity(rules, multicore, "method: clipped-direct", 2)).toBe(63);
  expect(capacity(rules, multicore, "method: clipped-direct", 3)).toBe(57);
});

test("a battery lead carries what a single does, less 3 % for its fine wires", () => {
  expect(capacity("gb", lead(50), "method: clipped-direct")).toBeCloseTo(0.97 * 228, 9);
  expect(capacity("gb", lead(50), "method: free-in-air")).toBeCloseTo(0.97 * 228, 9);
  expect(capacity("iec", lead(50), "method: conduit-in-air")).toBeCloseTo(0.97 * 198, 9);
  expect(capacity("iec", lead(16), "method: conduit-in-air")).toBeCloseTo(0.95 * 100, 9);
});

test("thermal insulation takes its share by length (BS 7671 Table 52.2), and free air does not help", () => {
  const surrounded = (method: string, length: string) =>
    capacity("gb", multicore, `method: ${method}  thermal-insulation: surrounded  surrounded-length: ${length}`);
  expect(surrounded("clipped-direct", "100 mm")).toBeCloseTo(0.78 * 63, 9);
  expect(surrounded("clipped-direct", "2 m")).toBeCloseTo(0.5 * 63, 9);
  expect(surrounded("free-in-air", "100 mm")).toBeCloseTo(0.78 * 63, 9);
  // Method B of 4D2A is 52 A.
  expect(surrounded("conduit-in-air", "100 mm")).toBeCloseTo(0.78 * 52, 9);
});

test("insulation on one side is as bad as an insulated wall, method A", () => {
  expect(capacity("gb", multicore, "method: clipped-direct  thermal-insulation: one-side")).toBe(43);
  expect(capacity("gb", multicore, "method: clipped-direct  thermal-insulation: none")).toBe(63);
});

test("an unknown length of insulation is not guessed", () => {
  const laid = "method: clipped-direct  thermal-insulation: surrounded";
  const missing = () => {
    try {
      return capacity("gb", multicore, laid);
    } catch (problem) {
      if (problem instanceof NotKnown) return problem.missing.map(({ property }) => property);
      throw problem;
    }
  };
  expect(missing()).toEqual(["surrounded-length"]);
});
