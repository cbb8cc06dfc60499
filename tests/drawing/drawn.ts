import { assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import type { Placed } from "../../language-server/src/drawing/layout.js";
import { pictureOf, type RenderOptions } from "../../language-server/src/drawing/render.js";
import { svgOf } from "../../language-server/src/drawing/svg.js";
import { light, type Theme } from "../../language-server/src/drawing/themes.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

/** A design in one file, assessed. */
export function assessText(text: string): Assessment {
  const file = new SourceFile("file:///site.sun", parser);
  file.update(text);
  return assess([file]);
}

/** A placed diagram as an SVG document. */
export function renderSvg(placed: Placed, theme: Theme = light, options: RenderOptions = {}): string {
  return svgOf(pictureOf(placed, options), theme);
}
