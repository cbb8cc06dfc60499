import type { Assessment } from "../../assessment/assessment.js";
import { formatNumber } from "../../physics/display.js";
import { group, line, type Paint, type Picture, rect, type Shape, text } from "../picture.js";
import { millimetre, paperMargin, papers } from "../sheets/paper.js";
import { fitText, wrapText } from "../text-width.js";
import { type Margin, type Margins, marginsOf, shareText } from "./margins.js";

const title = "How much of each limit is used";
const left = 300;
const barWidth = 260;
const right = 250;
const width = left + barWidth + right;
const pitch = 17;
const top = 84;
const paints: Readonly<Record<Margin["outcome"], Paint>> = { pass: "first", finding: "error", departure: "note" };

/** A bar for each check that compares two figures. */
export function marginsPicture(assessment: Assessment): Picture {
  const found = marginsOf(assessment);
  return page(found.margins, footOf(found), title);
}

/** The same for paper: as many bars a page as are printed no smaller than they are drawn. */
export function marginsPages(assessment: Assessment): Picture[] {
  const found = marginsOf(assessment);
  const foot = footOf(found);
  const room = (papers.A4.height - 2 * paperMargin) * millimetre - heightOf(0, foot);
  const most = Math.floor(room / pitch);
  const pages: Margin[][] = [];
  for (let at = 0; at === 0 || at < found.margins.length; at += most) pages.push(found.margins.slice(at, at + most));
  if (pages.length === 1) return [marginsPicture(assessment)];
  return pages.map((margins, index) => page(margins, foot, `${title}, sheet ${index + 1} of ${pages.length}`));
}

function page(margins: readonly Margin[], foot: readonly string[], words: string): Picture {
  const bottom = top + margins.length * pitch;
  const full = barWidth / 1.25;
  const shapes: Shape[] = [
    text(20, 28, words, { size: 15, bold: true }),
    text(20, 45, "The tightest first; what passes the line is a finding, or a departure from a rule.", {
      size: 10,
      fill: "faint",
    }),
  ];
  for (const share of [0, 0.25, 0.5, 0.75, 1, 1.25]) {
    const x = left + share * full;
    shapes.push(line(x, top - 6, x, bottom, { stroke: share === 1 ? "ink" : "rule", width: share === 1 ? 1.6 : 0.6 }));
    shapes.push(text(x, top - 11, `${formatNumber(share * 100)} %`, { size: 10, anchor: "middle", bold: share === 1 }));
  }
  for (const [index, margin] of margins.entries()) shapes.push(barOf(margin, top + index * pitch, full));
  for (const [index, each] of foot.entries())
    shapes.push(text(20, bottom + 22 + index * 13, each, { size: 10, fill: "faint" }));
  const height = heightOf(margins.length, foot);
  return { width, height, title: words, description: `${margins.length} bars. ${foot.join(" ")}`, shapes };
}

function heightOf(bars: number, foot: readonly string[]): number {
  return top + bars * pitch + 25 + 13 * foot.length;
}

/** What has no bar, and why. */
function footOf({ chosenToReach, withoutFigures, notChecked }: Margins): string[] {
  const left: string[] = [];
  if (chosenToReach > 0)
    left.push(
      `${chosenToReach} that hold compare counts, sizes of conductors or ratings chosen to be equal: a share of them says nothing`,
    );
  if (withoutFigures > 0) left.push(`${withoutFigures} compare no figures`);
  left.push(`${notChecked} could not be made`);
  return wrapText(`Checks without a bar: ${left.join("; ")}.`, 10, width - 40);
}

function barOf({ id, used, outcome, words }: Margin, y: number, full: number): Shape {
  const share = shareText(used);
  const verdict = outcome === "pass" ? "" : `, ${outcome}`;
  return group(
    [
      text(left - 8, y + 11.5, fitText(id, 10, left - 24), { size: 10, anchor: "end" }),
      rect(left, y + 2, Math.max(Math.min(used, 1.25) * full, 1), pitch - 5, {
        fill: paints[outcome],
        opacity: outcome === "departure" ? 0.6 : 1,
      }),
      text(left + barWidth + 6, y + 11.5, fitText(`${share} · ${words}${verdict}`, 10, right - 12), {
        size: 10,
        fill: outcome === "pass" ? "ink" : paints[outcome],
      }),
    ],
    { id, sort: `margin ${outcome}`, label: `${id}: ${share} used, ${words}${verdict}` },
  );
}
