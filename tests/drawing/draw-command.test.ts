import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../language-server/src/cli/main.js";
import { root } from "../examples/examples.js";
import { largeSite } from "./large-site.js";

async function draw(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ["", ""];
  const code = await main(["draw", ...words], {
    folder: root,
    page: { colors: false, width: 100 },
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}

const cottage = "examples/alder-cottage/alder-cottage.sun";
const folder = mkdtempSync(join(tmpdir(), "sunwright-draw-"));

describe("sunwright draw", () => {
  test("prints the diagram as SVG", async () => {
    const { code, out } = await draw(cottage);
    expect(code).toBe(0);
    expect(out).toMatch(/^<svg [^>]*>\n<title[^>]*>Single-line diagram of Alder Cottage</);
  });

  test("draws a chart by its name, and names them all where it is wrong", async () => {
    expect((await draw(cottage, "--chart", "curve:INV.pv1")).out).toContain("INV.pv1: current against voltage");
    const { code, err } = await draw(cottage, "--chart", "curve:INV");
    expect(code).toBe(2);
    expect(err).toContain("There are voltage:S1, voltage:S2, curve:INV.pv1, curve:INV.pv2, margins, drop.");
  });

  test("draws current against voltage under the conditions that are named, in the language's own units", async () => {
    const curve = ["--chart", "curve:INV.pv1"];
    const at = async (...words: string[]) => (await draw(cottage, ...curve, ...words)).out;
    expect(await at("--irradiance", "800 W/m2", "--cell-temperature", "50 degC")).toContain(
      "at 800 W/m² and cells at 50 °C",
    );
    expect(await at("--irradiance", "0.8 kW/m2")).toContain("at 800 W/m² and cells at 25 °C");
    expect(await at("--cell-temperature=-10 degC")).toContain("at 1000 W/m² and cells at −10 °C");
  });

  test.each([
    [["--chart", "curve:INV.pv1", "--irradiance", "800"], '--irradiance cannot be 800. Write --irradiance "800 W/m2".'],
    [["--chart", "curve:INV.pv1", "--irradiance", "800 W"], "--irradiance cannot be 800 W. Write"],
    [["--chart", "curve:INV.pv1", "--irradiance", "800 w/m2"], "--irradiance: w/m2 is not a unit"],
    [["--chart", "curve:INV.pv1", "--irradiance", "9 kW/m2"], "cannot be 9 kW/m2. It is from 50 to 1500 W/m²."],
    [["--chart", "curve:INV.pv1", "--cell-temperature", "120 degC"], "It is from −45 to 100 °C."],
    [["--chart", "curve:INV.pv1", "--cell-temperature"], "--cell-temperature"],
    [["--chart", "drop", "--irradiance", "800 W/m2"], "are for charts of current against voltage"],
    [["--cell-temperature", "50 degC"], "are for charts of current against voltage"],
  ])("refuses %j", async (words, said) => {
    const { code, out, err } = await draw(cottage, ...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(said);
  });

  test("draws what is supposed, and says so on the sheet", async () => {
    const { out } = await draw(cottage, "--set", "S1.count=12");
    expect(out).toContain("12 × Hollin430");
    expect(out).toContain("what is supposed is not");
  });

  test("writes a PDF: the same bytes each time, no date of its own", async () => {
    const files = [join(folder, "first.pdf"), join(folder, "second.pdf")];
    for (const file of files)
      expect(await draw(cottage, "--as", "pdf", "--out", file)).toMatchObject({ code: 0, err: "" });
    const [first, second] = files.map((file) => readFileSync(file));
    expect(first!.equals(second!)).toBe(true);
    const text = first!.toString("latin1");
    expect(text).toMatch(/^%PDF-1\./);
    expect(text.match(/\/Type \/Page\b/g)).toHaveLength(1);
    expect(text).toContain("/MediaBox [0 0 1190.55 841.89]");
    expect(text).not.toMatch(/CreationDate|ModDate|CreateDate/);
  });

  test("a large site takes several sheets: a PDF holds them all, --sheet gives one", async () => {
    const site = join(folder, "site.sun");
    writeFileSync(site, largeSite(120));
    const pdf = join(folder, "site.pdf");
    expect(await draw(site, "--as", "pdf", "--out", pdf)).toMatchObject({ code: 0, err: "" });
    const pages = readFileSync(pdf, "latin1").match(/\/Type \/Page\b/g)!.length;
    expect(pages).toBeGreaterThan(2);
    expect((await draw(site, "--sheet", "2")).out).toContain(`>2 of ${pages}<`);
    expect((await draw(site)).out).toContain(">1 of 1<");
    const { code, err } = await draw(site, "--sheet", "99");
    expect(code).toBe(2);
    expect(err).toContain(`there is no sheet 99. There are sheets 1 to ${pages}.`);
    expect((await draw(cottage, "--sheet", "2")).err).toContain("The whole diagram is on sheet 1.");
    expect((await draw(cottage, "--sheet", "two")).err).toContain("--sheet takes a number from 1 on");
    expect((await draw(cottage, "--sheet", "1", "--chart", "drop")).err).toContain("A chart has no sheets");
  });

  test("a PDF has to have a file, and the file a place", async () => {
    expect((await draw(cottage, "--as", "pdf")).err).toContain("name the file to write, as in --out plan.pdf");
    const { code, err } = await draw(cottage, "--out", join(folder, "nowhere", "plan.svg"));
    expect(code).toBe(2);
    expect(err).toContain("plan.svg");
  });
});
