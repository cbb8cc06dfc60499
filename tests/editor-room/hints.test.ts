import { describe, expect, test } from "vitest";
import { hintsIn } from "../../language-server/src/editor/hints/hints.js";
import { lensesOf } from "../../language-server/src/editor/lenses/lenses.js";
import { defaultSettings, type HintSort } from "../../language-server/src/editor/settings.js";
import { acProtection } from "../../language-server/src/rules/ac-protection.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { cottage, files } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

/** Each hint with the piece of text before it. */
function hints(texts: Record<string, string>, name: string, off?: HintSort): string[] {
  const workspace = new TestWorkspace(texts);
  const text = workspace.text(uriOf(name))!;
  const wanted = { ...defaultSettings.hints, ...(off && { [off]: false }) };
  return hintsIn(workspace.view, uriOf(name), 0, text.length, wanted).map(({ offset, label }) => {
    const before = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset).trim();
    return `${before} » ${label}`;
  });
}

describe("hints", () => {
  // 8 · 38.9 V · (1 + 0.0025 · 35) = 338.4 V, IEC 62548-1; 338.4 / 600 = 56.4 %.
  test("a string shows its cold voltage and the share of the tightest limit on its way", () => {
    expect(hints(files, "cottage.sun")).toContain("string S1 is 8 x Hollin430 » Uoc 338.4 V cold, 56.4 % of 600 V");
  });

  // ΔU = 2 · L · r · I with r20 = 5.09 Ω/km (IEC 60228, class 5, tinned 4 mm²) at 90 °C: 6.49 mΩ/m; I = 13.2 A.
  // 2 · 9 m · 6.49 mΩ/m · 13.2 A = 1.54 V of 8 · 32.6 V = 260.8 V: 0.59 %; 1.54 V · 13.2 A = 20.4 W.
  test("a run shows what it loses: in volts, as a share, in watts", () => {
    expect(hints(files, "cottage.sun")).toContain("run W1 from S1 to Q1: 9 m of Solar4 » −1.5 V, 0.59 %, 20 W");
  });

  test("a lead that carries nothing shows nothing", () => {
    expect(hints(files, "cottage.sun").filter((hint) => hint.includes("run W3"))).toEqual([]);
  });

  test("a device shows Ib ≤ In ≤ Iz, and a rise stands at the run that feeds in", () => {
    const found = hints({ "a.sun": exampleText(acProtection.examples.holds) }, "a.sun");
    expect(found.find((hint) => hint.includes("rcbo K9"))).toMatch(
      /^way 9: rcbo K9 is Rcbo25A » Ib 19\.1 A ≤ In 25 A ≤ Iz \d+(\.\d+)? A$/,
    );
    expect(found.find((hint) => hint.includes("run W2"))).toMatch(/» \+\d\.\d+ V, \d\.\d+ %$/);
  });

  test("what does not hold is written the other way round", () => {
    const found = hints({ "a.sun": exampleText(acProtection.examples.breaks) }, "a.sun");
    expect(found.find((hint) => hint.includes("rcbo K9"))).toContain("Ib 40 A > In 32 A");
  });

  test.each<[HintSort, string]>([
    ["strings", "string S1"],
    ["runs", "run W1"],
  ])("%s can be switched off by themselves", (sort, line) => {
    const isOfLine = (hint: string): boolean => hint.startsWith(line);
    expect(hints(files, "cottage.sun").some(isOfLine)).toBe(true);
    const left = hints(files, "cottage.sun", sort);
    expect(left.some(isOfLine)).toBe(false);
    expect(left.length).toBeGreaterThan(0);
  });

  test("devices can be switched off by themselves", () => {
    const texts = { "a.sun": exampleText(acProtection.examples.holds) };
    expect(hints(texts, "a.sun", "devices").filter((hint) => hint.includes("Ib"))).toEqual([]);
  });

  // At standard test conditions the sheet itself is what is expected: 8 · 38.9 V = 311.2 V, 14 A.
  test("a reading shows what the design expects, until that is switched off", () => {
    const reading = `measured S1 on 2026-06-12 {
    open-circuit-voltage: 309 V
    short-circuit-current: 13.8 A
    irradiance: 1000 W/m2
    cell-temperature: 25 degC
}
`;
    const texts = { ...files, "cottage.sun": cottage + reading };
    const found = hints(texts, "cottage.sun");
    expect(found).toContain("open-circuit-voltage: 309 V » expected 311.2 V");
    expect(found).toContain("short-circuit-current: 13.8 A » expected 14 A");
    expect(hints(texts, "cottage.sun", "tests").filter((hint) => hint.includes("expected"))).toEqual([]);
  });

  // 1 MΩ at 500 V and above: IEC 62446-1, from memory.
  test.each([550, 0.4])("a reading of %d MΩ is held against a lower bound, whether or not it keeps it", (read) => {
    const reading = `measured S1 on 2026-06-12 { insulation-resistance: ${read} Mohm  insulation-test-voltage: 1000 V }\n`;
    const found = hints({ ...files, "cottage.sun": cottage + reading }, "cottage.sun");
    expect(found.find((hint) => hint.includes("insulation-resistance"))).toMatch(/» at least 1 MΩ$/);
  });

  test("only those of the asked stretch are given", () => {
    const workspace = new TestWorkspace(files);
    const start = cottage.indexOf("run W1");
    const found = hintsIn(workspace.view, uriOf("cottage.sun"), start, start + 60, defaultSettings.hints);
    expect(found).toHaveLength(1);
  });

  test("a line that is being typed has none, and costs the others nothing", () => {
    const workspace = new TestWorkspace(files);
    workspace.view.notices(uriOf("cottage.sun"));
    workspace.write("cottage.sun", cottage.replace("9 m of Solar4", "9 m of"));
    const text = workspace.text(uriOf("cottage.sun"))!;
    const found = hintsIn(workspace.view, uriOf("cottage.sun"), 0, text.length, defaultSettings.hints);
    const lines = found.map(({ offset }) => text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset));
    expect(lines.some((line) => line.startsWith("run W1"))).toBe(false);
    expect(lines.some((line) => line.startsWith("string S1"))).toBe(true);
  });
});

function lenses(texts: Record<string, string>, name: string): string[] {
  const workspace = new TestWorkspace(texts);
  const text = workspace.text(uriOf(name))!;
  return lensesOf(workspace.view, uriOf(name)).map(
    ({ span, title }) => `${text.slice(span.start, span.end)}: ${title}`,
  );
}

describe("lenses", () => {
  test("the site has its verdict in one line", () => {
    const bad = cottage.replace("8 x", "15 x");
    const [site] = lenses({ ...files, "cottage.sun": bad }, "cottage.sun");
    expect(site).toMatch(
      /^site: 1 error, .*\d+ not checked; tightest of what holds: [a-z-]+ on \S+, [\d.]+ % of its limit$/,
    );
    expect(lenses(files, "cottage.sun")[0]).not.toContain("error");
  });

  test("a string has its voltages against the tracker's window", () => {
    const found = lenses(files, "cottage.sun").find((lens) => lens.startsWith("S1"));
    expect(found).toMatch(/^S1: works at [\d.]+ V hot to [\d.]+ V cold; INV\.pv1 tracks 80 V to 550 V$/);
  });

  test("a string outside the window says on which side", () => {
    const found = lenses({ ...files, "cottage.sun": cottage.replace("8 x", "2 x") }, "cottage.sun");
    expect(found.find((lens) => lens.startsWith("S1"))).toMatch(/: below it when hot$/);
  });

  test("a part says how many sites use it", () => {
    const other = cottage.replace("Alder Cottage", "Rowan Lodge");
    const texts = { ...files, "lodge.sun": other };
    expect(lenses(texts, "roof.sun")).toEqual([
      "Hollin430: used by 2 sites, 4 times",
      "Solar4: used by 2 sites, 12 times",
    ]);
    expect(lenses({ "a.sun": "part Q is isolator { poles: 2 }\n" }, "a.sun")).toEqual(["Q: used by no site"]);
  });
});
