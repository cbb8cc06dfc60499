import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../language-server/src/cli/main.js";
import { chartsOf, pagesOf } from "../../language-server/src/drawing/charts/charts.js";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { file } from "../../language-server/src/drawing-worker/answers.js";
import type { FileParams } from "../../language-server/src/drawing-worker/questions.js";
import { askedConditions } from "../../language-server/src/editor/diagram/chart-answer.js";
import { assessed, root } from "../examples/examples.js";

const folder = mkdtempSync(join(tmpdir(), "sunwright-exported-"));

/** What the command line writes. */
async function ofCommandLine(design: string, as: string, more: readonly string[]): Promise<Buffer> {
  const out = join(folder, `drawn.${as}`);
  const ignore = (): void => {};
  const around = { folder: root, page: { colors: false, width: 100 }, out: ignore, err: ignore };
  expect(await main(["draw", `examples/${design}`, "--as", as, "--out", out, ...more], around)).toBe(0);
  return readFileSync(out);
}

/** What the editor writes: what is drawn has come over the wire. */
async function ofEditor(drawn: FileParams["drawn"], as: FileParams["as"]): Promise<Buffer> {
  const text = await file({ drawn: JSON.parse(JSON.stringify(drawn)), as });
  return Buffer.from(text, as === "svg" ? "utf8" : "base64");
}

describe.each(["alder-cottage/alder-cottage.sun", "long-barn/long-barn.sun"])(
  "files that the editor writes of %s are those that the command line writes",
  (design) => {
    const assessment = assessed(design);

    test.each(["svg", "pdf"] as const)("the diagram as %s", async (as) => {
      const own = await ofEditor({ diagram: diagramOf(assessment) }, as);
      expect(own.equals(await ofCommandLine(design, as, []))).toBe(true);
    });

    test.each(["svg", "pdf"] as const)("each chart as %s", async (as) => {
      for (const chart of chartsOf(assessment).filter(
        ({ sort }, index, all) => all.findIndex((each) => each.sort === sort) === index,
      )) {
        const pages = as === "svg" ? [chart.picture()] : pagesOf(chart);
        const own = await ofEditor({ pages }, as);
        expect(own.equals(await ofCommandLine(design, as, ["--chart", chart.name])), chart.name).toBe(true);
      }
    });

    test.each(["svg", "pdf"] as const)("current against voltage under other conditions as %s", async (as) => {
      const chart = chartsOf(assessment).find(({ sort }) => sort === "curve")!;
      // The panel has degrees Celsius, and asks the server in kelvin.
      const asked = askedConditions({ irradiance: 640, cell: 51.3 + 273.15 });
      const own = await ofEditor({ pages: pagesOf(chart, asked) }, as);
      const conditions = ["--irradiance", "640 W/m2", "--cell-temperature", "51.3 degC"];
      expect(own.equals(await ofCommandLine(design, as, ["--chart", chart.name, ...conditions]))).toBe(true);
    });
  },
);
