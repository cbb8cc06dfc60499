import { describe, expect, test } from "vitest";
import { hoverAt } from "../../language-server/src/editor/hover/hover.js";
import { cottage, files, plant, roof } from "./alder-cottage.js";
import { TestWorkspace, uriOf, withCursor } from "./workspace.js";

function hover(marked: string, name = "cottage.sun"): string {
  const { text, offset } = withCursor(marked);
  const workspace = new TestWorkspace({ ...files, [name]: text });
  const found = hoverAt(workspace.view, uriOf(name), offset, {
    to: ({ chunk, from }) => `${chunk.uri}#${chunk.start + from}`,
    docs: "file:///docs",
  });
  return found?.markdown ?? "";
}

const bad = cottage.replace("8 x", "15 x");

describe("an item", () => {
  test("says what it is, what its doc comment says, and what lies on its way", () => {
    const text = hover(cottage.replace("string S1", "string S<|>1"));
    expect(text).toContain("**S1**: PV string, 8 × Hollin430");
    expect(text).toContain("Rear slope, no shading after 9 am.");
    expect(text).toContain("On the array side: S1 → W1 → Q1 → W2 → INV.pv1");
  });

  // Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)), IEC 62548-1; 15 · 38.9 · (1 + 0.0025 · 35) = 634.556 by hand.
  test("gives each check in words, the finding with its working, the sheet it rests on and its source", () => {
    const text = hover(bad.replace("string S1", "string S<|>1"));
    expect(text).toMatch(
      /^Finding \(error\), \[string-voltage\]\(file:\/\/\/docs\/rules\/string-voltage\.md\)\. S1: 15 × Hollin430 reach 634\.6 V/m,
    );
    expect(text).toContain(
      "Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 15 · 38.9 V · (1 + (−0.25 %/K) · (−10 °C − 25 °C)) = 634.6 V",
    );
    expect(text).toContain(
      `Udc,max = 600 V, [Brook4, max-dc-voltage](${uriOf("plant.sun")}#${plant.indexOf("600 V")})`,
    );
    expect(text).toContain(
      `Uoc = 38.9 V, [Hollin430, open-circuit-voltage](${uriOf("roof.sun")}#${roof.indexOf("38.9 V")})`,
    );
    expect(text).toContain("IEC 62548");
    expect(text).toContain("confirm against the current edition");
  });

  // What is asked first comes first: what is wrong and its sum, where it is, what makes it dead; what holds comes last.
  test("in this order", () => {
    const text = hover(bad.replace("string S1", "string S<|>1"));
    const order = ["**S1**", "Rear slope", "Finding (error)", "Working:", "Source", "On the array side:"];
    order.push("Feeds into Q1 through W1.", "Open Q1:", "Stays live:", "The other checks:");
    const places = order.map((words) => text.indexOf(words));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test("where nothing is wrong, the tightest check stands in the finding's place, and is not listed again", () => {
    const text = hover(cottage.replace("string S1", "string S<|>1"));
    const [tightest = ""] = /^Holds, .*$/m.exec(text) ?? [];
    expect(tightest).toMatch(/[\d.]+ % of the limit used\.$/);
    expect(text.indexOf(tightest)).toBeLessThan(text.indexOf("Working:"));
    expect(text.split(tightest)).toHaveLength(2);
  });

  test("says what is not checked and what holds, never by layout alone", () => {
    const text = hover(cottage.replace("string S1", "string S<|>1"));
    expect(text).toContain("Not checked, [tracker-window]");
    expect(text).toContain("start-voltage of INV.pv1 is not stated.");
    expect(text).toMatch(
      /Holds, \[string-voltage\][^\n]* against INV: \d[\d.]* V, limit 600 V, [\d.]+ % of the limit used\./,
    );
  });

  test("lists what was assumed", () => {
    const text = hover(cottage.replace("    mounting: on-roof\n", "").replace("string S1", "string S<|>1"));
    expect(text).toMatch(/Assumed/);
  });

  test("a departure is named with its reason", () => {
    const text = hover(
      `${bad}departure string-voltage on S1 because "test rig"\n`.replace("string S1", "string S<|>1"),
    );
    expect(text).toContain("Departed from [string-voltage]");
    expect(text).toContain("Reason given: test rig");
  });

  test("is described where it is mentioned", () => {
    expect(hover(cottage.replace("from S1 to", "from S<|>1 to"))).toContain("**S1**: PV string");
    expect(hover(cottage.replace("run W1", "run W<|>1"))).toContain("**W1**: run from S1.out to Q1.in, 9 m of Solar4");
  });
});

describe("words of the language", () => {
  test("a part in short", () => {
    const text = hover(cottage.replace("8 x Hollin430", "8 x Hollin<|>430"));
    expect(text).toContain("A module with a frame of its own.");
    expect(text).toContain("- open-circuit-voltage: `38.9 V`");
    expect(text).toContain("Used by S1, S2.");
  });
  test("a property: meaning, units, place on the sheet, typical value", () => {
    const text = hover(roof.replace("    open-circuit-voltage:", "    open-circuit-vol<|>tage:"), "roof.sun");
    expect(text).toContain("**open-circuit-voltage** (Uoc)");
    expect(text).toContain("`V`, `kV`, `mV`");
    expect(text).toContain("On a data sheet: Voc, open-circuit voltage.");
    expect(text).toContain("Typical: `38.9 V`");
  });
  test("a property that the sheet states as well", () => {
    const text = hover(
      cottage.replace('Q1 is RotaryDc32 { location: "plant wall" }', "Q1 is RotaryDc32 { rated-vol<|>tage: 700 V }"),
    );
    expect(text).toContain("The sheet of RotaryDc32 says `800 V`.");
  });
  test("a quantity in other units", () => {
    expect(hover(cottage.replace("9 m of", "9<|> m of"))).toContain(
      "`9 m`, a length: the same as 900 cm, 9000 mm, 0.009 km, 29.528 ft",
    );
    expect(hover(cottage.replace("-10 degC", "-10<|> degC"))).toContain(
      "`−10 °C`, a temperature: the same as 263.15 K, 14 °F",
    );
  });
  // 10 AWG is 0.127 mm · 92^((36 − 10) / 39) = 2.588 mm across, 5.2612 mm² (ASTM B258); 16 mm² is no gauge.
  test("a quantity only in units that help, with the article of its name", () => {
    expect(hover("part C is cable { conductor-area: 16<|> mm2 }\n")).toContain(
      "`16 mm²`, an area: the same as 31.576 kcmil",
    );
    expect(hover("part C is cable { conductor-area: 10<|> AWG }\n")).toContain(
      "`10 AWG`, an area: the same as 5.2612 mm²",
    );
    expect(hover('site "X" { ground-flash-density: 0.5<|> /km2/yr }\n')).toContain(
      "a lightning ground flash density\n",
    );
    expect(hover("string S1 is 9 x M { tilt: 35<|> deg }\n")).toContain("`35°`, an angle: the same as 0.61087 rad");
    expect(hover("board B { rated-current: 10<|> kA }\n")).toContain("`10 kA`, a current: the same as 10000 A");
  });
  test("a kind, a word, a rule, a used file", () => {
    expect(hover(cottage.replace("isolator Q1", "isol<|>ator Q1"))).toContain("A switch-disconnector.");
    expect(hover(cottage.replace("mounting: on-roof", "mounting: on-<|>roof"))).toContain("one of `on-roof`");
    expect(hover(`${cottage}expect string-vol<|>tage on S1\n`)).toContain(
      "[About this rule](file:///docs/rules/string-voltage.md)",
    );
    expect(hover(`${cottage}expect missing-u<|>nit on S1\n`)).toContain("without the unit it needs");
    expect(hover(cottage.replace('"roof.sun"', '"ro<|>of.sun"'))).toBe("Declares Hollin430 (module), Solar4 (cable).");
  });
  test("nothing between words", () => {
    expect(hover(`${cottage}\n<|>\n`)).toBe("");
  });
});

test("a marked word that is no name says how it was worked out", () => {
  const long = cottage.replace("9 m of Solar4", "180 m of Sol<|>ar4");
  const text = hover(long);
  expect(text).toContain("**dc-voltage-drop** (rule, warning)");
  expect(text).toContain("Working:");
  expect(text).toContain("**Solar4**: part, cable");
});

test("what a person wrote cannot pass for layout", () => {
  const text = hover(
    `${bad}departure string-voltage on S1 because "**see** [here](x) \`y\`"\n`.replace("string S1", "string S<|>1"),
  );
  expect(text).toContain("\\*\\*see\\*\\* \\[here\\](x) \\`y\\`");
});
