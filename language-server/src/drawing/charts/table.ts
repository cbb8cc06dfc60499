import { formatNumber } from "../../physics/display.js";
import type { Plot } from "./plot.js";
import { ticks } from "./ticks.js";

/** The figures of a chart for whoever reads them rather than looks at them: plain words in rows and columns. */
export interface Table {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
}
export interface Row {
  /** What the row is about, as the picture's group for it is called; undefined where the row is about no one thing. */
  readonly id?: string;
  readonly cells: readonly string[];
}

/** Every curve at round steps of the x axis, then what the plot itself says of limits and points. */
export function plotTables({ title, x, curves, tables }: Plot): Table[] {
  const steps = ticks(x.from, x.to, 12);
  const whole: Table = {
    caption: title,
    columns: [x.words, ...curves.map(({ words, unit }) => `${words}, ${unit}`)],
    rows: steps.map((step) => ({
      cells: [formatNumber(step), ...curves.map(({ at }) => formatNumber(at(step), 4))],
    })),
  };
  return [whole, ...tables.filter(({ rows }) => rows.length > 0)];
}
