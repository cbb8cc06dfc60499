import type { Assessment } from "../../assessment/assessment.js";
import { formatNumber, formatValue } from "../../physics/display.js";
import { group, line, type Paint, type Picture, rect, type Shape, text } from "../picture.js";
import { type DropPath, dropsOf } from "../run-drops.js";
import { fitText, textWidth } from "../text-width.js";
import type { Table } from "./table.js";
import { ticks } from "./ticks.js";

const left = 170;
const barWidth = 560;
const right = 190;
const pitch = 40;

/** Voltage lost along each way, run by run, as a share; the limits of the rule set or the site across. */
export function dropPicture(assessment: Assessment): Picture {
  const { paths, notKnown } = dropsOf(assessment);
  const { judge } = assessment;
  const dc = paths.filter(({ steps }) => steps[0]?.word === "drop");
  const ac = paths.filter(({ steps }) => steps[0]?.word === "rise");
  const parts = [
    {
      words: "D.c. side: drop from string to tracker, share of the string's voltage",
      paths: dc,
      paint: "dc" as const,
      limits: [
        { words: "design limit", value: judge.limit("dc-voltage-drop-design").value },
        { words: "ceiling", value: judge.limit("dc-voltage-drop-ceiling").value },
      ],
    },
    {
      words: "A.c. side: rise from supply to what feeds in, share of the nominal voltage",
      paths: ac,
      paint: "ac" as const,
      limits: [{ words: "limit", value: judge.limit("ac-voltage-rise").value }],
    },
  ].filter((part) => part.paths.length > 0);
  const shapes: Shape[] = [text(20, 28, "Voltage drop along each way", { size: 15, bold: true })];
  let at = 48;
  for (const part of parts) {
    const end = Math.max(...part.limits.map(({ value }) => value), ...part.paths.map(total)) * 1.1;
    const atX = (share: number): number => left + (share / end) * barWidth;
    const bottom = at + 38 + part.paths.length * pitch;
    shapes.push(text(20, at + 10, part.words, { size: 11, bold: true }));
    for (const tick of ticks(0, end * 100, 8)) {
      const x = atX(tick / 100);
      shapes.push(line(x, at + 36, x, bottom, { stroke: "rule", width: 0.6 }));
      shapes.push(text(x, at + 31, `${formatNumber(tick)} %`, { size: 10, anchor: "middle" }));
    }
    for (const [index, path] of part.paths.entries()) shapes.push(bar(path, at + 42 + index * pitch, part.paint, atX));
    const inOrder = [...part.limits].sort((a, b) => a.value - b.value);
    for (const [index, { words, value }] of inOrder.entries()) {
      const x = atX(value);
      // The words of two stand on either side, so that they never meet, however close the two are.
      const anchor = inOrder.length === 1 ? "middle" : index === 0 ? "end" : "start";
      const aside = { middle: 0, end: -4, start: 4 }[anchor];
      shapes.push(line(x, at + 36, x, bottom + 4, { stroke: "error", width: 1.4, dash: [7, 3] }));
      shapes.push(
        text(x + aside, bottom + 16, `${words} ${formatValue(value, "ratio", "%")}`, {
          size: 10,
          anchor,
          fill: "error",
        }),
      );
    }
    at = bottom + 32;
  }
  if (parts.length === 0) {
    shapes.push(text(20, at + 10, "There is no way of which all is known.", { size: 10, fill: "faint" }));
    at += 26;
  }
  for (const { id, missing } of notKnown) {
    const words = `${id}: not known, ${missing}.`;
    shapes.push(text(20, at + 10, fitText(words, 10, left + barWidth + right - 40), { size: 10, fill: "faint" }));
    at += 14;
  }
  return {
    width: left + barWidth + right,
    height: at + 14,
    title: "Voltage drop along each way",
    description: paths.map((path) => `${wayText(path)}: ${percent(total(path))}.`).join(" "),
    shapes,
  };
}

/** The same in rows: each run of each way, and each way as a whole. */
export function dropTable(assessment: Assessment): Table {
  const { paths, notKnown } = dropsOf(assessment);
  return {
    caption: "Voltage drop along each way, run by run",
    columns: ["way", "run", "share", "volts"],
    rows: [
      ...paths.flatMap((path) => [
        ...path.steps.map(({ run, share, volts }) => ({
          id: run.id,
          cells: [wayText(path), run.id, share ? percent(share.value) : "not known", voltage(volts.value)],
        })),
        { id: path.id, cells: [wayText(path), "all of it", percent(total(path)), voltage(totalVolts(path))] },
      ]),
      ...notKnown.map(({ id, missing }) => ({ id, cells: [id, "not known", missing, ""] })),
    ],
  };
}

function wayText({ id, to }: DropPath): string {
  return `${id} to ${to}`;
}

function percent(share: number): string {
  return formatValue(share, "ratio", "%", 3);
}

function voltage(volts: number): string {
  return formatValue(volts, "voltage", "V", 3);
}

function totalVolts({ steps }: DropPath): number {
  let sum = 0;
  for (const { volts } of steps) sum += volts.value;
  return sum;
}

function total({ steps }: DropPath): number {
  let sum = 0;
  for (const { share } of steps) sum += share?.value ?? 0;
  return sum;
}

function bar(path: DropPath, y: number, paint: Paint, atX: (share: number) => number): Shape {
  const shapes: Shape[] = [text(left - 8, y + 13, fitText(wayText(path), 10, left - 28), { size: 10, anchor: "end" })];
  let from = 0;
  for (const { run, share } of path.steps) {
    const to = from + (share?.value ?? 0);
    const [x, width] = [atX(from), atX(to) - atX(from)];
    const own: Shape[] = [rect(x, y + 2, width, 16, { stroke: "paper", width: 1.2, fill: paint })];
    if (width > textWidth(run.id, 9) + 4)
      own.push(text(x + width / 2, y + 13.5, run.id, { size: 9, anchor: "middle", fill: "paper" }));
    shapes.push(group(own, { id: run.id, sort: "step", label: `${run.id}: ${percent(share?.value ?? 0)}` }));
    from = to;
  }
  const words = `${percent(from)}, ${voltage(totalVolts(path))}`;
  shapes.push(text(left + barWidth + 16, y + 13.5, words, { size: 10, bold: true }));
  const names = path.steps.map(({ run }) => run.id).join(" + ");
  shapes.push(text(left, y + 30, fitText(names, 9, barWidth), { size: 9, fill: "faint" }));
  return group(shapes, { id: path.id, sort: "path", label: `${wayText(path)}: ${words}` });
}
