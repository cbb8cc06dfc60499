import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { DesignReport, Report } from "../../language-server/src/cli/report/report.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { design, inTwoFiles } from "./designs.js";
import { folderWith, type Ran, sunwright, sunwrightHere } from "./program.js";
import { answerOf } from "./schemas.js";

const mild = referenceHouse.replace("lowest-temperature: -15 degC", "lowest-temperature: -10 degC");

function here(files: Record<string, string>, ...words: string[]): Promise<Ran> {
  return sunwrightHere(words, folderWith(files));
}
async function report(files: Record<string, string>, ...words: string[]): Promise<Report> {
  const { out } = await here(files, "check", ...words, "--format", "json");
  return answerOf<Report>("check", out);
}
function designIn({ files }: Report): DesignReport {
  const found = files.find((file) => file.kind === "design");
  if (!found) throw new Error("There is no design in the report.");
  return found;
}

describe("sunwright check --set", () => {
  it("answers from the built program, writes nothing and says that no file says so", () => {
    const folder = folderWith({ "barn.sun": design(10) });
    const words = ["check", "barn.sun", "--set", "S1.count=15"];
    const { code, out, err } = sunwright(words, { folder });
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toMatch(/^barn\.sun {2}Reed Barn\n {2}What if S1\.count = 15 \(written: 10\)\n/);
    expect(out).toMatch(/error +string-voltage {2}\(what if\)\n/);
    // 15 · 38.9 V · (1 − 0.0025 · (−10 − 25)) = 634.6 V: the sum of IEC 62548 for the cold open-circuit voltage.
    expect(out).toContain("S1: 15 × Sorrel420 reach 634.6 V");
    expect(out).toContain("string-voltage on S1: holds as written, finding if so");
    expect(out).toContain("What if: these results suppose S1.count = 15. No file says so, and none was changed.");
    expect(readFileSync(join(folder, "barn.sun"), "utf8")).toBe(design(10));
    expect(sunwright(["check", "barn.sun"], { folder }).out).not.toMatch(/what if/i);
  });

  // The acceptance list of the reference house: 11 · 38.8 V · 1.10 and 6 · 38.8 V · 1.10.
  it("what if it is −15 °C? every d.c. part with its margin, the new figures marked", async () => {
    const { out } = await here(
      { "house.sun": mild },
      "check",
      "house.sun",
      "--set",
      "site.lowest-temperature=-15 degC",
      "--show-working",
    );
    expect(out).toContain("What if site.lowest-temperature = −15 °C (written: −10 °C)");
    expect(out).toMatch(/469\.5 V against 500 V, INV, 93\.9 % used \(what if\)/);
    expect(out).toMatch(/256\.1 V against 500 V, INV, 51\.2 % used \(what if\)/);
    expect(out).toContain(
      "Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 11 · 38.8 V · (1 + (−0.25 %/K) · (−15 °C − 25 °C)) = 469.5 V",
    );
  });

  // The same list: 12 · 38.8 V · 1.10 = 512.2 V, 12 · 32.6 V · 1.116 = 436.6 V above 430 V.
  it("can a twelfth module be added to A? no, and at what temperature it begins to fail", async () => {
    const { code, out } = await here({ "house.sun": referenceHouse }, "check", "house.sun", "--set", "A.count=12");
    expect(code).toBe(1);
    expect(out).toMatch(
      /error +string-voltage {2}\(what if\)\n +A: 12 × Module430 reach 512\.2 V at −15 °C; INV stands 500 V\. It fails below −4\.6 °C\./,
    );
    expect(out).toMatch(
      /tracker-window {2}\(what if\)\n +A: 12 × Module430 would work at 436\.6 V at −15 °C; INV\.pv1 tracks up to 430 V\./,
    );
  });

  it("marks in JSON what is supposed, what rests on it, and what changes", async () => {
    const told = await report(
      { "barn.sun": design(10) },
      "barn.sun",
      "--set",
      "S1.count=15",
      "--set",
      "W1.length=25 m",
    );
    expect(told.whatIf).toEqual(["S1.count = 15", "W1.length = 25 m"]);
    const { whatIf, findings, passes } = designIn(told);
    expect(whatIf?.suppositions).toEqual([
      { target: "S1", property: "count", value: "15", written: "10", text: "S1.count = 15 (written: 10)" },
      { target: "W1", property: "length", value: "25 m", written: "12 m", text: "W1.length = 25 m (written: 12 m)" },
    ]);
    expect(whatIf?.changes).toContainEqual({
      rule: "string-voltage",
      thing: "S1",
      asWritten: ["pass"],
      supposed: ["finding", "pass"],
    });
    expect(findings.find(({ rule }) => rule === "string-voltage")?.hypothetical).toBe(true);
    expect(passes.filter(({ hypothetical }) => hypothetical).length).toBeGreaterThan(0);
    expect(passes.filter(({ hypothetical }) => !hypothetical).length).toBeGreaterThan(0);
    const plain = await report({ "barn.sun": design(10) }, "barn.sun");
    expect(plain.whatIf).toBeUndefined();
    expect(JSON.stringify(plain)).not.toMatch(/what if|hypothetical|whatIf/);
  });

  it("marks what a word changes as well, though no figure is made of it", async () => {
    const { whatIf, findings } = designIn(
      await report({ "house.sun": referenceHouse }, "house.sun", "--set", "Q1.lockable=no"),
    );
    expect(whatIf?.changes).toContainEqual({
      rule: "dc-isolator",
      thing: "Q1",
      asWritten: ["pass", "not-checked"],
      supposed: ["finding", "pass", "not-checked"],
    });
    expect(findings.find(({ rule, thing }) => rule === "dc-isolator" && thing === "Q1")?.hypothetical).toBe(true);
  });

  it("says so where nothing comes out otherwise", async () => {
    const { out } = await here({ "barn.sun": design(10) }, "check", "barn.sun", "--set", "site.note=x");
    expect(out).toContain('What if site.note = "x" (not stated)');
    expect(out).toContain("What changes: no check has another outcome than as written.");
  });

  it("supposes something of a part in a file that the design uses", async () => {
    const { out } = await here(inTwoFiles(10), "check", "barn.sun", "--set", "Mill5.max-dc-voltage=400 V");
    expect(out).toMatch(/string-voltage {2}\(what if\)/);
    expect(out).toContain("INV stands 400 V");
  });

  it("names what was assumed", async () => {
    const { out } = await here(
      { "barn.sun": design(10) },
      "check",
      "barn.sun",
      "--set",
      "site.building=ground-mounted",
    );
    expect(out).toContain("What if site.building = ground-mounted (assumed: dwelling)");
  });

  it("of several designs, takes those that have something of that name", async () => {
    const other = design(10).replaceAll("S1", "S7").replace("Reed Barn", "Rush Barn");
    const files = { "a.sun": design(10), "b.sun": other };
    const { code, out } = await here(files, "check", ".", "--set", "S7.count=15");
    expect(code).toBe(1);
    expect(out).toMatch(/a\.sun {2}Reed Barn\n {2}What if: nothing of that name here; these results are of the text\./);
    expect(out).toMatch(/b\.sun {2}Rush Barn\n {2}What if S7\.count = 15/);
  });

  it("is marked with --quiet too", async () => {
    const { out } = await here({ "barn.sun": design(10) }, "check", "barn.sun", "--set", "S1.count=9", "--quiet");
    expect(out).toContain("What if: these results suppose S1.count = 9.");
  });
});

describe("what makes no sense to suppose", () => {
  it.each([
    ["S9.count=12", "--set S9.count = 12: There is no item, run or part S9. Did you mean S1?"],
    ["S1.tlit=3 deg", "--set S1.tlit = 3 deg: S1 (PV string) has no property tlit. Did you mean tilt?"],
    ["site.lowest-temperature=-15", "needs its unit, for example -10 degC."],
    ["site.lowest-temperature=-15 V", "is a temperature, for example -10 degC; -15 V is a voltage."],
    ["site.lowest-temperature=-15 degc", "Did you mean degC?"],
    ["W1.length=25 V", "The length of a run is a length"],
    ["S1.count", '--set: "S1.count" supposes nothing. Write TARGET.PROPERTY = VALUE'],
    ["S1.part=Sorel420", "There is no part Sorel420. Did you mean Sorrel420?"],
  ])("%s", async (hypothesis, message) => {
    const { code, out, err } = await here({ "barn.sun": design(10) }, "check", "barn.sun", "--set", hypothesis);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(message);
    expect(err.trim().split("\n")).toHaveLength(1);
  });
  it("the same twice", async () => {
    const words = ["check", "barn.sun", "--set", "S1.count=9", "--set", "S1.count=10"];
    const { code, err } = await here({ "barn.sun": design(10) }, ...words);
    expect(code).toBe(2);
    expect(err).toBe("--set: S1.count is supposed twice. Suppose one value at a time.\n");
  });
});
