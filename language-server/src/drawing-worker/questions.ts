import type { Diagram } from "../drawing/diagram.js";
import type { Picture, State } from "../drawing/picture.js";

/*
 * What the drawing worker is asked, over a JSON-RPC connection. Finding places is slow and loads a large library: it has
 * a thread of its own, so that neither typing nor the language server ever waits for a picture.
 */

/** `draw`: a diagram as an SVG document whose colours are the variables of the page that shows it. */
export const drawQuestion = "draw";

/** `chart`: a picture that needs no places found, as an SVG document in the same colours. */
export const chartQuestion = "chart";

export interface ChartParams extends Named {
  readonly picture: Picture;
}

/** `file`: the same bytes as the command line writes, for paper; those of a PDF in base 64. */
export const fileQuestion = "file";

export interface FileParams {
  /** The diagram, or the pages of a chart: one, for an SVG. */
  readonly drawn: { readonly diagram: Diagram } | { readonly pages: readonly Picture[] };
  readonly as: "svg" | "pdf";
}

interface Named {
  /** Of the picture in its page, where it is not the only one there. */
  readonly name?: string;
}
export interface DrawParams extends Named {
  readonly diagram: Diagram;
  /** How things are at one moment, by id; absent where that is not asked. */
  readonly states?: readonly (readonly [string, State])[];
}
