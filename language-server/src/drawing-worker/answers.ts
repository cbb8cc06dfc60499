import { layout, type Placed } from "../drawing/layout.js";
import { renderSvg } from "../drawing/render.js";
import { svgOf } from "../drawing/svg.js";
import { ofPage } from "../drawing/themes.js";
import type { ChartParams, DrawParams } from "./questions.js";

/** The last layout: whoever only wants it drawn in another state does not wait for another. */
let last: { readonly key: string; readonly placed: Promise<Placed> } | undefined;

export async function draw({ diagram, states }: DrawParams): Promise<string> {
  const key = JSON.stringify(diagram);
  if (last?.key !== key) last = { key, placed: layout(diagram) };
  const placed = await last.placed;
  return renderSvg(placed, ofPage, { sheet: false, ...(states && { states: new Map(states) }) });
}

export function chart({ picture }: ChartParams): string {
  return svgOf(picture, ofPage, "sunwright-chart");
}
