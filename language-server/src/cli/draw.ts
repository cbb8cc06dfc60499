import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { type Chart, chartsOf, pagesOf } from "../drawing/charts/charts.js";
import { diagramOf } from "../drawing/diagram-of.js";
import { layout } from "../drawing/layout.js";
import type { Picture } from "../drawing/picture.js";
import { pictureOf } from "../drawing/render.js";
import { sheetsOf } from "../drawing/sheets/sheets.js";
import { svgOf } from "../drawing/svg.js";
import { themes } from "../drawing/themes.js";
import type { DrawArguments } from "./draw-arguments.js";
import { whyUnreadable } from "./inputs.js";
import { UsageError } from "./option-values.js";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings.js";
import { type NamedDesign, oneDesign } from "./switching.js";

/** `sunwright draw`: 0 drawn, 2 not drawn. What is wrong with the design is in the picture, and is for `check` to say. */
export async function runDraw(wanted: DrawArguments, around: Surroundings): Promise<ExitCode> {
  if (wanted.as === "pdf" && wanted.out === undefined)
    throw new UsageError("A PDF is no text: name the file to write, as in --out plan.pdf.");
  const design = await oneDesign(wanted, around);
  if (!design) return exitCodes.unusable;
  const theme = themes[wanted.theme];
  const chart = wanted.chart === undefined ? undefined : chartOf(design, wanted.chart);
  if (wanted.as === "svg") {
    const svg = svgOf(chart ? chart.picture(wanted.conditions) : await diagramPicture(design, wanted.sheet), theme);
    if (wanted.out === undefined) around.out(svg);
    else save(wanted.out, svg, around);
    return exitCodes.clean;
  }
  // Loaded only by those who want it: it is larger than all the rest.
  const { renderPdf } = await import("../drawing/pdf/pdf.js");
  const pages = chart ? pagesOf(chart, wanted.conditions) : await diagramPages(design, wanted.sheet);
  save(wanted.out!, await renderPdf(pages, theme, chart ? "A4" : "A3"), around);
  return exitCodes.clean;
}

function chartOf({ file, assessment }: NamedDesign, name: string): Chart {
  const charts = chartsOf(assessment);
  const chart = charts.find((each) => each.name === name);
  if (chart) return chart;
  throw new UsageError(`${file}: there is no chart ${name}. There are ${charts.map((each) => each.name).join(", ")}.`);
}

/** One sheet, or the whole diagram in one picture, however large. */
async function diagramPicture(design: NamedDesign, sheet: number | undefined): Promise<Picture> {
  if (sheet !== undefined) return sheetOf(design, sheet);
  return pictureOf(await layout(diagramOf(design.assessment)));
}

async function diagramPages(design: NamedDesign, sheet: number | undefined): Promise<readonly Picture[]> {
  return sheet === undefined ? sheetsOf(diagramOf(design.assessment)) : [await sheetOf(design, sheet)];
}

async function sheetOf({ file, assessment }: NamedDesign, sheet: number): Promise<Picture> {
  const sheets = await sheetsOf(diagramOf(assessment));
  const picture = sheets[sheet - 1];
  if (picture) return picture;
  const there = sheets.length === 1 ? "The whole diagram is on sheet 1" : `There are sheets 1 to ${sheets.length}`;
  throw new UsageError(`${file}: there is no sheet ${sheet}. ${there}.`);
}

function save(out: string, content: string | Uint8Array, around: Surroundings): void {
  try {
    writeFileSync(resolve(around.folder, out), content);
  } catch (error) {
    throw new UsageError(`${out} ${whyUnreadable(error)}`);
  }
}
