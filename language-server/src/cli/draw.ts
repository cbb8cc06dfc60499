import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { chartsOf } from "../drawing/charts/charts.js";
import { diagramOf } from "../drawing/diagram-of.js";
import { layout } from "../drawing/layout.js";
import type { Picture } from "../drawing/picture.js";
import { pictureOf } from "../drawing/render.js";
import { svgOf } from "../drawing/svg.js";
import { themes } from "../drawing/themes.js";
import { type DrawArguments, UsageError } from "./arguments.js";
import { whyUnreadable } from "./inputs.js";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings.js";
import { type NamedDesign, oneDesign } from "./switching.js";

/** `sunwright draw`: 0 drawn, 2 not drawn. What is wrong with the design is in the picture, and is for `check` to say. */
export async function runDraw(wanted: DrawArguments, around: Surroundings): Promise<ExitCode> {
  if (wanted.as === "pdf" && wanted.out === undefined)
    throw new UsageError("A PDF is no text: name the file to write, as in --out plan.pdf.");
  const design = await oneDesign(wanted, around);
  if (!design) return exitCodes.unusable;
  const picture = await pictureFor(design, wanted.chart);
  const theme = themes[wanted.theme];
  if (wanted.as === "svg") {
    const svg = svgOf(picture, theme);
    if (wanted.out === undefined) around.out(svg);
    else save(wanted.out, svg, around);
    return exitCodes.clean;
  }
  // Loaded only by those who want it: it is larger than all the rest.
  const { pdfOf } = await import("./pdf.js");
  save(wanted.out!, await pdfOf(picture, theme, wanted.chart === undefined ? "A3" : "A4"), around);
  return exitCodes.clean;
}

async function pictureFor({ file, assessment }: NamedDesign, name: string | undefined): Promise<Picture> {
  if (name === undefined) return pictureOf(await layout(diagramOf(assessment)));
  const charts = chartsOf(assessment);
  const chart = charts.find((each) => each.name === name);
  if (chart) return chart.picture();
  throw new UsageError(`${file}: there is no chart ${name}. There are ${charts.map((each) => each.name).join(", ")}.`);
}

function save(out: string, content: string | Uint8Array, around: Surroundings): void {
  try {
    writeFileSync(resolve(around.folder, out), content);
  } catch (error) {
    throw new UsageError(`${out} ${whyUnreadable(error)}`);
  }
}
