import { describe, expect, it } from "vitest";
import type { Report } from "../../language-server/src/cli/report/report.js";
import { design, inTwoFiles, stringLine } from "./designs.js";
import { folderWith, sunwright, sunwrightHere } from "./program.js";
import { answerOf } from "./schemas.js";

const caution = "PV modules cannot be switched off";

describe("sunwright check", () => {
  it("has exit code 0 for a design in which nothing of error severity is found", () => {
    const folder = folderWith({ "barn.sun": design(10) });
    const { code, out, err } = sunwright(["check", "barn.sun"], { folder });
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^barn\.sun {2}Reed Barn\n/);
    expect(out).toContain("1 file, 1 design: no finding from the rules checked.");
    expect(out).toContain(caution);
  });

  it("has exit code 1 and says where, which and why, and what to do, when something is found", () => {
    const folder = folderWith({ "barn.sun": design(15) });
    const { code, out } = sunwright(["check", "barn.sun"], { folder });
    expect(code).toBe(1);
    expect(out).toMatch(new RegExp(`\\n {2}${stringLine}:14 +error +string-voltage\\n`));
    // 15 · 38.9 V · (1 − 0.0025 · (−10 − 25)) = 634.6 V: the sum of IEC 62548 for the cold open-circuit voltage.
    expect(out).toContain("634.6 V");
    expect(out).toContain("600 V");
    expect(out).toMatch(/barn\.sun:\d+:\d+ {2}INV stands 600 V/);
    expect(out).toContain("1 error");
  });

  it("sums up the five outcomes, the tightest margin, what is not checked, and names rule set and editions", async () => {
    const folder = folderWith({ "barn.sun": design(14) });
    const { out } = await sunwrightHere(["check", "barn.sun"], folder);
    expect(out).toMatch(/\d+ passed, 0 findings, 0 departures, \d+ not applicable, \d+ not checked/);
    // 14 modules reach 592.3 V of 600 V.
    expect(out).toMatch(/Tightest margin: 1\.\d % at S1, string-voltage \(592\.3 V against 600 V, INV, 98\.7 % used\)/);
    expect(out).toMatch(/Not checked\n(.*\n)*? {4}method is not stated: W1 \(for dc-cable-current\)/);
    expect(out).toMatch(/Rule set gb: BS 7671 \(2018 with Amendment 4:2026\)/);
    expect(out).toMatch(/\d+ checks could not be made\./);
  });

  it("never calls a design compliant", async () => {
    const folder = folderWith({ "good.sun": design(10), "bad.sun": design(15) });
    for (const words of [
      ["check", "."],
      ["check", ".", "--show-working", "--assumptions"],
      ["check", ".", "--quiet"],
    ]) {
      const { out } = await sunwrightHere(words, folder);
      expect(out).not.toMatch(/complian|complies|conform|certified|is safe/i);
      expect(out).toContain(caution);
    }
  });

  it("prints what the site sets for itself beside what the rule set has", async () => {
    const set = "limits { dc-voltage-drop-design: 2 %  dc-isolator: external  dc-ac-ratio: 1.5 }";
    const own = folderWith({ "barn.sun": design(10).replace("    rules: gb\n", `    rules: gb\n    ${set}\n`) });
    const { out } = await sunwrightHere(["check", "barn.sun"], own);
    expect(out).toContain(
      "  The site's own limits: dc-voltage-drop-design 2 % in place of 1 %; dc-ac-ratio 1.5, as the rule set has it; dc-isolator external in place of built-in-accepted\n",
    );
    const json = await sunwrightHere(["check", "barn.sun", "--format", "json"], own);
    expect(answerOf<Report>("check", json.out).files).toMatchObject([
      { ownLimits: [{ name: "dc-voltage-drop-design", value: "2 %", ruleSet: "1 %" }, {}, {}] },
    ]);
    const none = await sunwrightHere(["check", "barn.sun"], folderWith({ "barn.sun": design(10) }));
    expect(none.out).not.toContain("own limits");
  });

  it("tells of problems of the text beside findings, and both fail", async () => {
    const folder = folderWith({ "barn.sun": `${design(15)}string S2 is 3 x Sorel420\n` });
    const { code, out } = await sunwrightHere(["check", "barn.sun"], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/error +string-voltage/);
    expect(out).toMatch(/error +unknown-name\n.*Did you mean Sorrel420\?/);
  });

  it("reports no finding and no pass of a declaration whose text has an error", async () => {
    const folder = folderWith({ "barn.sun": design(15).replace("15 x Sorrel420 {", "15 x Sorrel420 { tilt 3") });
    const { code, out } = await sunwrightHere(["check", "barn.sun"], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/error +syntax/);
    expect(out).not.toMatch(/error +string-voltage/);
    expect(out).toContain("Not all of the text could be read");
  });

  it("tells a problem of a parts file under that file, once for all designs that use it", async () => {
    const { "parts/sheets.sun": sheets, "barn.sun": barn } = inTwoFiles(10);
    const folder = folderWith({
      "parts/sheets.sun": `${sheets}part Sorrel420 is module {}\n`,
      "barn.sun": barn!,
      "byre.sun": barn!,
    });
    const { code, out } = await sunwrightHere(["check", "."], folder);
    expect(code).toBe(1);
    expect(out.match(/duplicate-name/g)).toHaveLength(1);
    expect(out).toMatch(/\nparts\/sheets\.sun\n {2}\d+:6 +error +duplicate-name/);
    expect(out).toContain("3 files, 2 designs: 1 error,");
  });

  it("checks a parts file by itself as text only", async () => {
    const folder = folderWith({ "sheets.sun": inTwoFiles(10)["parts/sheets.sun"]! });
    const { code, out } = await sunwrightHere(["check", "sheets.sun"], folder);
    expect(code).toBe(0);
    expect(out).toContain("1 file, 0 designs: nothing is wrong with the text. There was no installation to check.");
    expect(out).not.toContain("passed");
  });

  it("takes a folder, with everything below it, and patterns", async () => {
    const folder = folderWith({
      "a/one.sun": design(10),
      "a/b/two.sun": design(10),
      "a/notes.txt": "no design",
      "a/node_modules/three.sun": design(10),
    });
    expect((await sunwrightHere(["check", "a"], folder)).out).toContain("2 files, 2 designs");
    expect((await sunwrightHere(["check", "a/**/t*.sun"], folder)).out).toContain("1 file, 1 design");
    expect((await sunwrightHere(["check", "a", "a/one.sun", "{a,x}/*.sun"], folder)).out).toContain(
      "2 files, 2 designs",
    );
  });

  it("takes file names with blanks, brackets and letters of any script", () => {
    const names = ["Weidenhof Süd [neu].sun", "πλάγια.sun", "7.sun", "-q.sun"];
    const folder = folderWith(Object.fromEntries(names.map((name) => [name, design(10)])));
    const { code, out, err } = sunwright(["check", "--", ...names], { folder });
    expect({ code, err }).toEqual({ code: 0, err: "" });
    for (const name of names) expect(out).toContain(`${name}  Reed Barn`);
  });

  it("counts lines and columns alike with any line ending and with a byte order mark", async () => {
    const text = design(15);
    const folder = folderWith({
      "lf.sun": text,
      "crlf.sun": text.replaceAll("\n", "\r\n"),
      "cr.sun": text.replaceAll("\n", "\r"),
      "bom.sun": `\ufeff${text}`,
    });
    const { out } = await sunwrightHere(["check", ".", "--quiet"], folder);
    expect(out.match(new RegExp(`^ {2}${stringLine}:14 +error +string-voltage$`, "gm"))).toHaveLength(4);
  });
});

describe("options of sunwright check", () => {
  const warned = `${design(10)}string S2 is 3 x Sorrel420\n`;

  it("--fail-on decides from which severity the exit code is 1", async () => {
    const folder = folderWith({ "barn.sun": warned });
    const code = async (...words: string[]) => (await sunwrightHere(["check", "barn.sun", ...words], folder)).code;
    expect(await code()).toBe(0);
    expect(await code("--fail-on", "warning")).toBe(1);
    expect(await code("--fail-on", "note")).toBe(1);
  });

  it("--quiet leaves what fails, and the last lines", async () => {
    const folder = folderWith({ "barn.sun": `${design(15)}string S2 is 3 x Sorrel420\n` });
    const quiet = (await sunwrightHere(["check", "barn.sun", "--quiet"], folder)).out;
    expect(quiet).toMatch(/error +string-voltage/);
    expect(quiet).not.toContain("unwired-item");
    expect(quiet).not.toContain("passed");
    const strict = (await sunwrightHere(["check", "barn.sun", "--quiet", "--fail-on", "warning"], folder)).out;
    expect(strict).toMatch(/warning +unwired-item/);
  });

  it("--show-working prints the sums of findings and passes, and where the rule comes from", async () => {
    const folder = folderWith({ "barn.sun": design(15) });
    const plain = (await sunwrightHere(["check", "barn.sun"], folder)).out;
    const worked = (await sunwrightHere(["check", "barn.sun", "--show-working"], folder)).out;
    expect((await sunwrightHere(["check", "--show-working", "barn.sun"], folder)).out).toBe(worked);
    const sum =
      "Uoc,max = n · Uoc · (1 + β · (Tmin − 25 °C)) = 15 · 38.9 V · (1 + (−0.25 %/K) · (−10 °C − 25 °C)) = 634.6 V";
    expect(plain).not.toContain("Uoc,max =");
    expect(worked).toContain(sum);
    expect(worked).toMatch(/Source: IEC 62548/);
    expect(worked).toMatch(/Passed\n(.*\n)* {4}tracker-short-circuit on INV\.pv1\n {6}17\.5 A against 20 A/);
    expect(worked).toMatch(/Not applicable\n {4}.* on .*: /);
  });

  it("--assumptions lists what nobody stated, with the reason and what used it", async () => {
    const text = design(10).replace("    open-circuit-voltage-coefficient: -0.25 %/K\n", "");
    const folder = folderWith({ "barn.sun": text });
    const { out } = await sunwrightHere(["check", "barn.sun", "--assumptions"], folder);
    expect(out).toMatch(/Assumed\n(.*\n)*? {4}temperature coefficient of Uoc not stated: .*\(for string-voltage on S1/);
    expect((await sunwrightHere(["check", "barn.sun"], folder)).out).not.toContain("Assumed");
  });

  it("--assumptions says which rule set was taken where the site names none", async () => {
    const folder = folderWith({ "barn.sun": design(10).replace("    rules: gb\n", "") });
    const { out } = await sunwrightHere(["check", "barn.sun", "--assumptions"], folder);
    expect(out).toMatch(/Assumed\n {4}site, rules: iec, because .* \(for every check\)/);
    expect(out).toMatch(/Rule set iec: /);
  });

  it("shows a departure as one, and does not fail on it", async () => {
    const reason = "the maker's letter of 3 May allows 640 V";
    const folder = folderWith({ "barn.sun": `${design(15)}departure string-voltage on S1 because "${reason}"\n` });
    const { code, out } = await sunwrightHere(["check", "barn.sun"], folder);
    expect(code).toBe(0);
    expect(out).toMatch(/departed +string-voltage\n/);
    expect(out).toContain(`Reason given: ${reason}`);
    expect(out).toContain("1 departure,");
  });

  it("shows that a finding is expected where the text says so", async () => {
    const folder = folderWith({ "barn.sun": `${design(15)}expect string-voltage on S1\n` });
    const { code, out } = await sunwrightHere(["check", "barn.sun"], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/error +string-voltage {2}\(expected\)/);
  });

  it("uses colours only where they are wished: never into a pipe by itself, never against NO_COLOR", () => {
    const folder = folderWith({ "barn.sun": design(15) });
    const out = (environment: Record<string, string>) => sunwright(["check", "barn.sun"], { folder, environment }).out;
    const colour = "\u001b[";
    expect(out({})).not.toContain(colour);
    expect(out({ CI: "1" })).not.toContain(colour);
    expect(out({ FORCE_COLOR: "1" })).toContain(colour);
    expect(out({ FORCE_COLOR: "1", NO_COLOR: "1" })).not.toContain(colour);
  });
});
