import { conductor } from "../conductor.js";
import type { Diagram } from "../diagram.js";
import { line, type Shape, text } from "../picture.js";
import { wrapText } from "../text-width.js";

/** What stands beside or below the drawing, in columns: the legend of lines, the findings, and the title block. */
export const columnWidth = 340;
export const pad = 14;
export const size = 10;
export const pitch = 13;

/** Which sheet of how many. */
export interface Page {
  readonly number: number;
  readonly of: number;
  /** Where the findings are, if they are not on this sheet. */
  readonly findings?: string;
}

export interface Column {
  readonly shapes: readonly Shape[];
  readonly height: number;
}

/** How d.c., a.c. and earth are told apart. */
export function linesLegend(x: number, y: number): Column {
  const rows = [
    ["dc", "d.c., a pair of conductors"],
    ["ac", "a.c., line and neutral or three lines"],
    ["earth", "earth conductor"],
  ] as const;
  const shapes: Shape[] = [text(x + pad, y + 12, "Lines", { size: 12, bold: true })];
  for (const [index, [current, words]] of rows.entries()) {
    const at = y + 30 + index * 16;
    shapes.push(
      ...conductor(current, [
        { x: x + pad, y: at - 3 },
        { x: x + pad + 44, y: at - 3 },
      ]),
      text(x + pad + 54, at, words, { size }),
    );
  }
  return { shapes, height: 30 + rows.length * 16 };
}

/** The title block; `bottom` is its lower edge. */
export function titleBlock({ title }: Diagram, page: Page, x: number, bottom: number): Column {
  const width = columnWidth - 2 * pad;
  const rows: [string, string[]][] = [
    ["Rules", [title.ruleSet, ...title.editions].flatMap((each) => wrapText(each, size, width - 70))],
    ["Checks", wrapText(title.checks, size, width - 70)],
  ];
  if (title.address) rows.push(["Address", wrapText(title.address, size, width - 70)]);
  if (title.designer) rows.push(["Designer", wrapText(title.designer, size, width - 70)]);
  rows.push(["Revision", [[title.revision ?? "not stated", title.date ?? "no date stated"].join(" · ")]]);
  rows.push(["Sheet", [`${page.number} of ${page.of}`]]);
  const cautions = title.cautions.flatMap((each) => wrapText(each, size, width));
  const head = wrapText(title.site, 17, width);
  let height = 16 + head.length * 21 + 20 + 8;
  for (const [, words] of rows) height += words.length * pitch + 5;
  height += 12 + cautions.length * pitch + 6;

  const top = bottom - height;
  const shapes: Shape[] = [];
  let at = top + 16;
  for (const each of head) {
    shapes.push(text(x + pad, at + 10, each, { size: 17, bold: true }));
    at += 21;
  }
  shapes.push(text(x + pad, at + 8, "Single-line diagram", { size: 11, fill: "faint" }));
  at += 26;
  for (const [name, words] of rows) {
    shapes.push(text(x + pad, at, name, { size, fill: "faint" }));
    for (const [index, each] of words.entries()) shapes.push(text(x + pad + 70, at + index * pitch, each, { size }));
    at += words.length * pitch + 5;
  }
  shapes.push(line(x + pad, at - 6, x + columnWidth - pad, at - 6, { stroke: "rule", width: 0.8 }));
  at += 10;
  for (const each of cautions) {
    shapes.push(text(x + pad, at, each, { size }));
    at += pitch;
  }
  return { shapes, height };
}
