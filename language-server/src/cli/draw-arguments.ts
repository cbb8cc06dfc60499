import type { Hypothesis } from "../design/what-if/hypothesis.js";
import type { Conditions } from "../drawing/charts/current-voltage.js";
import { chartConditions } from "./chart-conditions.js";
import { hypotheses, one, oneOf, type Parsed, UsageError } from "./option-values.js";

export interface DrawArguments {
  readonly command: "draw";
  readonly path: string;
  readonly as: "svg" | "pdf";
  /** Undefined: the single-line diagram. */
  readonly chart?: string;
  /** For a chart of current against voltage; undefined: standard test conditions. */
  readonly conditions?: Conditions;
  /** One of the sheets that the diagram takes on paper; undefined: all in a PDF, one picture in an SVG. */
  readonly sheet?: number;
  readonly theme: "light" | "dark" | "high-contrast";
  /** The file to write; undefined: the output stream. */
  readonly out?: string;
  readonly suppose: readonly Hypothesis[];
}

export function drawArguments(path: string | undefined, options: Parsed): DrawArguments {
  if (path === undefined) throw new UsageError("draw needs a file: draw FILE --as svg.");
  const conditions = chartConditions(options);
  return {
    command: "draw",
    path,
    as: oneOf("--as", options.as, ["svg", "pdf"]),
    theme: oneOf("--theme", options.theme, ["light", "dark", "high-contrast"]),
    ...(options.chart !== undefined && { chart: one("--chart", options.chart) }),
    ...(conditions && { conditions }),
    ...sheetOf(options),
    ...(options.out !== undefined && { out: one("--out", options.out) }),
    suppose: hypotheses(options),
  };
}

function sheetOf(options: Parsed): { readonly sheet?: number } {
  if (options.sheet === undefined) return {};
  if (options.chart !== undefined) throw new UsageError("A chart has no sheets: leave out --chart or --sheet.");
  const sheet = Number(one("--sheet", options.sheet));
  if (!Number.isInteger(sheet) || sheet < 1) throw new UsageError("--sheet takes a number from 1 on: --sheet 2.");
  return { sheet };
}
