import { describe, expect, test } from "vitest";
import { hoverAt } from "../../language-server/src/editor/hover/hover.js";
import { acProtection } from "../../language-server/src/rules/ac-protection.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

/** The hover one sign into the first occurrence of a piece of text. */
function hover(text: string, at: string, others: Record<string, string> = {}): string {
  const offset = text.indexOf(at);
  if (offset < 0) throw new Error(`there is no ${at}`);
  const { view } = new TestWorkspace({ ...others, "a.sun": text });
  return hoverAt(view, uriOf("a.sun"), offset + 1, { to: () => undefined, docs: "file:///docs" })?.markdown ?? "";
}

const bad = cottage.replace("8 x", "15 x");

describe("where a thing is", () => {
  const house = exampleText(acProtection.examples.holds);

  test("on the a.c. side its way from inverter to supply is written out, and the way of the board", () => {
    const text = hover(house, "K9 is Rcbo25A");
    expect(text).toContain("Between supply, inverters and batteries: INV.ac → W2 → CU.K9 → CU.MS → W1 → GRID");
    expect(text).toContain("**CU.K9**: RCBO, Rcbo25A\n\nWay 9 of CU, serves INV.\n");
  });

  test.each([
    ["a run", "W2 from CU.K9"],
    ["the supply", "GRID {"],
    ["the board", "CU is SplitBoard"],
  ])("%s on that way has it too", (_, at) => {
    expect(hover(house, at)).toContain("INV.ac → W2 → CU.K9");
  });

  test("on the array side it says what feeds it and what it feeds, with the runs between", () => {
    expect(hover(cottage, "Q1 is", files)).toContain("Fed from S1 through W1. Feeds into INV.pv1 through W2.");
  });

  test("what is wired to nothing says nothing of it", () => {
    expect(hover("isolator Q7 is P\npart P is isolator { poles: 2 }\n", "Q7")).not.toMatch(
      /Fed from|Feeds into|Between/,
    );
  });
});

describe("the order of checks", () => {
  test("an error comes before what holds, and of what holds the tightest comes first", () => {
    const lines = hover(bad, "S1 is", files)
      .split("\n")
      .filter((line) => /^(- )?(Finding|Holds)/.test(line));
    expect(lines[0]).toContain("Finding (error)");
    const shares = lines.flatMap((line) => {
      const used = /([\d.]+) % of the limit used/.exec(line);
      return used ? [Number(used[1])] : [];
    });
    expect(shares.length).toBeGreaterThan(3);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
  });
});

test("a check without figures says what holds, with one full stop behind an abbreviation", () => {
  const text = hover(cottage, "Q1 is", files);
  expect(text).toContain("/dc-isolator.md): made for d.c.\n");
  expect(text).not.toMatch(/\.\.(?!\.)/);
});

describe("a departure", () => {
  const departed = `${bad}departure string-voltage on S1 because "test rig" { by: "C. Reed"  until: 2027-01-01 }\n`;

  // 15 · 38.9 V · (1 + 0.0025 · 35) = 634.6 V, IEC 62548-1.
  test("says what it departs from, with the sum, who decided, and until when", () => {
    const text = hover(departed, "string-voltage on", files);
    expect(text).toContain("**string-voltage** (rule, error)");
    expect(text).toContain("Departed from [string-voltage]");
    expect(text).toContain("Reason given: test rig");
    expect(text).toContain("= 634.6 V");
    expect(text).toContain('by: "C. Reed"');
    expect(text).toContain("until: 2027-01-01");
    expect(text.match(/Departed from/g)).toHaveLength(1);
  });

  test("that answers nothing says so", () => {
    const text = hover(`${cottage}departure string-voltage on S1 because "x"\n`, "string-voltage on", files);
    expect(text).toContain("There is no finding of string-voltage on S1.");
  });

  test("an expectation shows the finding that it foretells", () => {
    expect(hover(`${bad}expect string-voltage on S1\n`, "string-voltage on", files)).toContain("634.6 V");
  });
});

describe("units", () => {
  test.each([
    ["run W1 from A to B: 60 ft of C\n", "60 ft", "18.288 m"],
    ["part C is cable { conductor-area: 10 AWG }\n", "10 AWG", "mm²"],
    ['site "X" { lowest-temperature: 14 degF }\n', "14 degF", "−10 °C"],
  ])("%s", (text, at, same) => {
    expect(hover(text, at)).toContain(same);
  });
});
