import { existsSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { problemIds } from "../../language-server/src/assessment/problem-ids.js";
import type { DesignReport, Report } from "../../language-server/src/cli/report/report.js";
import { rules } from "../../language-server/src/rules/index.js";
import { design, inTwoFiles, stringLine } from "./designs.js";
import { folderWith, root, sunwright, sunwrightHere } from "./program.js";
import { closed, schemaOf } from "./schemas.js";

const schema = schemaOf("check");
const validate = new Ajv2020({ allErrors: true }).compile(schema);
const validateClosed = new Ajv2020({ allErrors: true }).compile({
  ...closed(schema),
  $id: "urn:sunwright:schema:closed",
});

async function checked(folder: string, ...words: string[]): Promise<{ code: number | null; report: Report }> {
  const { code, out } = await sunwrightHere(["check", ...words, "--format", "json"], folder);
  const report = JSON.parse(out) as Report;
  validate(report);
  expect(validate.errors ?? []).toEqual([]);
  validateClosed(report);
  expect(validateClosed.errors ?? []).toEqual([]);
  return { code, report };
}

const designIn = (report: Report): DesignReport => {
  const found = report.files.find((file) => file.kind === "design");
  if (!found) throw new Error("There is no design in the report.");
  return found;
};

describe("sunwright check --format json", () => {
  it("is documented by the schema in all its parts", async () => {
    const folder = folderWith({
      ...inTwoFiles(15),
      "more.sun": `${design(15)}
string S2 is 3 x Sorel420
departure string-voltage on S1 because "agreed"
expect unknown-name on S2
`,
      "half.sun": design(10).replace("10 x", "10 x x x {"),
    });
    const { code, report } = await checked(folder, ".", "gone.sun", "--show-working");
    expect(code).toBe(2);
    expect(report.unreadable.map(({ file }) => file)).toEqual(["gone.sun"]);
    const all = report.files.filter((file) => file.kind === "design");
    const parts = ["findings", "departures", "passes", "notApplicable", "notChecked", "assumptions"] as const;
    for (const part of parts) expect(all.flatMap((file) => file[part] as object[]).length, part).toBeGreaterThan(0);
    expect(report.files.flatMap(({ problems }) => problems).map(({ expected }) => expected)).toContain(true);
    expect(all.some(({ incomplete }) => incomplete)).toBe(true);
  });

  it("fails against the schema where something is amiss with it", async () => {
    const { report } = await checked(folderWith({ "barn.sun": design(15) }), "barn.sun");
    expect(validate({ ...report, schemaVersion: 2 })).toBe(false);
    expect(validate({ ...report, caution: "" })).toBe(false);
    expect(validateClosed({ ...report, verdict: "fine" })).toBe(false);
    const [file] = report.files as DesignReport[];
    expect(validate({ ...report, files: [{ ...file, notChecked: [{ rule: "a", thing: "b", missing: [] }] }] })).toBe(
      false,
    );
  });

  it("gives a finding its rule, thing, place, figures and sources", async () => {
    const { code, report } = await checked(folderWith({ "barn.sun": design(15) }), "barn.sun");
    expect(code).toBe(1);
    const finding = designIn(report).findings.find(({ rule }) => rule === "string-voltage");
    expect(finding).toMatchObject({
      thing: "S1",
      severity: "error",
      location: { file: "barn.sun", line: stringLine, column: 14, endLine: stringLine },
      limit: { value: 600, unit: "V", text: "600 V" },
      value: { symbol: "Uoc,max", unit: "V", text: "634.6 V" },
      expected: false,
    });
    // IEC 62548, by hand: 15 · 38.9 V · (1 − 0.0025 · (−10 − 25)).
    expect(finding?.value?.value).toBeCloseTo(15 * 38.9 * 1.0875, 9);
    expect(finding?.message).toBe(`${finding?.what} ${finding?.why} ${finding?.todo}`);
    expect(finding?.related).toContainEqual(
      expect.objectContaining({ message: "INV stands 600 V", location: expect.objectContaining({ file: "barn.sun" }) }),
    );
    expect(finding?.sources.length).toBeGreaterThan(0);
    expect(finding?.workings).toBeUndefined();
  });

  it("gives a pass its value, limit, unit and utilisation", async () => {
    const { report } = await checked(folderWith({ "barn.sun": design(10) }), "barn.sun", "--show-working");
    const pass = designIn(report).passes.find(({ rule, against }) => rule === "string-voltage" && against === "INV");
    expect(pass).toMatchObject({ thing: "S1", limit: { value: 600, unit: "V" }, value: { unit: "V", text: "423 V" } });
    expect(pass?.utilisation).toBeCloseTo((10 * 38.9 * 1.0875) / 600, 9);
    expect(pass?.workings?.join("\n")).toContain("Uoc,max = n · Uoc");
  });

  it("names the missing property of what is not checked", async () => {
    const { report } = await checked(folderWith({ "barn.sun": design(10) }), "barn.sun");
    const found = designIn(report).notChecked.find(({ rule }) => rule === "dc-cable-current");
    expect(found?.missing).toContainEqual({ thing: "W1", property: "method" });
  });

  it("has one outcome for every check, and a summary of them", async () => {
    const { report } = await checked(folderWith({ "barn.sun": design(15), "byre.sun": design(10) }), ".");
    const all = report.files.filter((file) => file.kind === "design");
    for (const file of all)
      expect(file.outcomes).toEqual({
        passes: file.passes.length,
        findings: file.findings.length,
        departures: file.departures.length,
        notApplicable: file.notApplicable.length,
        notChecked: file.notChecked.length,
      });
    const total = all.reduce((sum, file) => sum + file.outcomes.passes, 0);
    expect(report.summary).toMatchObject({ files: 2, designs: 2, outcomes: { passes: total } });
  });

  it("uses ids that rules and the reference page have, and paths relative to the folder", async () => {
    const { report } = await checked(folderWith(inTwoFiles(15)), ".");
    const file = designIn(report);
    expect(report.files.map((each) => each.file)).toEqual(["barn.sun", "parts/sheets.sun"]);
    expect(file.uses).toEqual(["parts/sheets.sun"]);
    const known = new Set(rules.map(({ id }) => id));
    for (const { rule } of [...file.findings, ...file.passes, ...file.notChecked]) expect(known).toContain(rule);
    for (const { id } of report.files.flatMap(({ problems }) => problems)) expect(problemIds).toContain(id);
  });

  it("says the same as the text for people", async () => {
    const folder = folderWith({ "barn.sun": `${design(15)}string S2 is 3 x Sorrel420\n` });
    const { report } = await checked(folder, "barn.sun");
    const { out } = sunwright(["check", "barn.sun"], { folder });
    const file = designIn(report);
    for (const { message, location } of [...file.findings, ...file.problems]) {
      expect(out).toContain(message);
      expect(out).toContain(`  ${location.line}:${location.column} `);
    }
    expect(out).toContain(report.caution);
    expect(out).toContain(`${file.outcomes.passes} passed`);
  });

  it("is the same from one run of the program to the next", () => {
    const folder = folderWith(inTwoFiles(15));
    const { out } = sunwright(["check", ".", "--format", "json"], { folder });
    expect(JSON.parse(out)).toMatchObject({ files: [{}, {}] });
    expect(sunwright(["check", ".", "--format", "json"], { folder }).out).toBe(out);
  });
});

describe.skipIf(!existsSync(join(root, "examples")))("the examples", () => {
  it("are read without a complaint, and their result is documented by the schema", async () => {
    const { code, report } = await checked(root, "examples", "--show-working");
    expect(code).not.toBe(2);
    expect(report.unreadable).toEqual([]);
    expect(report.summary.designs).toBeGreaterThan(8);
  });

  it("have no finding of error severity in the good house", async () => {
    const { code, report } = await checked(root, "examples/alder-cottage");
    expect(report.summary.errors).toBe(0);
    expect(code).toBe(0);
  });
});
