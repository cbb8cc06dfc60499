import { describe, expect, test } from "vitest";
import { design } from "./designs.js";
import { folderWith, sunwright, sunwrightHere } from "./program.js";

/** Above the inverter's 600 V at −10 °C. */
const bad = design(15);

function settings(severity: Record<string, string>): string {
  return JSON.stringify({ severity });
}

async function check(files: Record<string, string>, ...words: string[]) {
  return sunwrightHere(["check", ...words], folderWith(files));
}

describe("a settings file beside the designs, or above them", () => {
  test("changes what a finding is, and whether it fails", async () => {
    const plain = await check({ "barn.sun": bad }, "barn.sun");
    expect(plain.code).toBe(1);
    const files = { "barn.sun": bad, "sunwright.json": settings({ "string-voltage": "warning" }) };
    const softer = await check(files, "barn.sun");
    expect(softer.code).toBe(0);
    expect(softer.out).toMatch(/warning.*string-voltage/);
    expect((await check(files, "--fail-on", "warning", "barn.sun")).code).toBe(1);
  });

  test("what is switched off is named in the summary and in the last line, and fails nothing", async () => {
    const files = { "a/b/barn.sun": bad, "sunwright.json": settings({ "string-voltage": "off" }) };
    const { code, out } = await check(files, "a");
    expect(code).toBe(0);
    expect(out).toContain("Switched off by settings");
    expect(out).toMatch(/error, string-voltage on S1: S1: 15 × Sorrel420 reach/);
    expect(out).toMatch(/1 finding switched off by settings\./);
    const { out: quiet } = await check(files, "--quiet", "a");
    expect(quiet).toMatch(/1 finding switched off by settings\./);
  });

  test("in JSON too, counted among the findings", async () => {
    const files = { "barn.sun": bad, "sunwright.json": settings({ "string-voltage": "off" }) };
    const report = JSON.parse((await check(files, "--format", "json", "barn.sun")).out);
    const [file] = report.files;
    expect(file.switchedOff).toMatchObject([{ rule: "string-voltage", thing: "S1", severity: "error" }]);
    expect(file.findings.map(({ rule }: { rule: string }) => rule)).not.toContain("string-voltage");
    expect(file.outcomes.findings).toBe(file.findings.length + 1);
  });

  test("the nearest one counts, for each design its own", async () => {
    const files = {
      "sunwright.json": settings({ "string-voltage": "off" }),
      "a/barn.sun": bad,
      "a/sunwright.json": settings({}),
      "b/barn.sun": bad,
    };
    const { code, out } = await check(files, "a", "b");
    expect(code).toBe(1);
    expect(out.match(/Switched off by settings/g)).toHaveLength(1);
  });

  test.each([
    ["no JSON", "{", "This is no JSON"],
    ["an unknown rule", settings({ "string-voltag": "off" }), "Did you mean string-voltage?"],
    ["another word", settings({ "string-voltage": "quiet" }), "It is one of error, warning, note, off."],
  ])("%s is told of, with exit code 2", async (_, text, message) => {
    const { code, err } = await check({ "barn.sun": bad, "sunwright.json": text }, "barn.sun");
    expect(code).toBe(2);
    expect(err).toContain(`sunwright.json: `);
    expect(err).toContain(message);
  });

  test("the built program reads it", () => {
    const folder = folderWith({ "barn.sun": bad, "sunwright.json": settings({ "string-voltage": "note" }) });
    expect(sunwright(["check", "barn.sun"], { folder }).code).toBe(0);
  });
});
