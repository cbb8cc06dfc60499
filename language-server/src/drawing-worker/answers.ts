import { layout, type Placed } from "../drawing/layout.js";
import { pictureOf, type RenderOptions } from "../drawing/render.js";
import { sheetsOf } from "../drawing/sheets/sheets.js";
import { svgOf } from "../drawing/svg.js";
import { light, ofPage } from "../drawing/themes.js";
import type { ChartParams, DrawParams, FileParams } from "./questions.js";

/** The last layout: whoever only wants it drawn in another state does not wait for another. */
let last: { readonly key: string; readonly placed: Promise<Placed> } | undefined;

export async function draw({ diagram, states, name }: DrawParams): Promise<string> {
  const key = JSON.stringify(diagram);
  if (last?.key !== key) last = { key, placed: layout(diagram) };
  const placed = await last.placed;
  const options: RenderOptions = { sheet: false, ...(states && { states: new Map(states) }) };
  return svgOf(pictureOf(placed, options), ofPage, name);
}

export function chart({ picture, name = "sunwright-chart" }: ChartParams): string {
  return svgOf(picture, ofPage, name);
}

export async function file({ drawn, as }: FileParams): Promise<string> {
  const isChart = "pages" in drawn;
  if (as === "svg") return svgOf(isChart ? drawn.pages[0]! : pictureOf(await layout(drawn.diagram)), light);
  // Only those who want a PDF wait until its library is read.
  const { renderPdf } = await import("../drawing/pdf/pdf.js");
  const sheets = isChart ? drawn.pages : await sheetsOf(drawn.diagram);
  return inBase64(await renderPdf(sheets, light, isChart ? "A4" : "A3"));
}

function inBase64(bytes: Uint8Array): string {
  let letters = "";
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return btoa(letters);
}
