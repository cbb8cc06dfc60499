import type { Assessment, Check } from "../../assessment/assessment.js";
import { placeOf, placeOfFinding } from "../../assessment/spots.js";
import { label } from "../../design/facts.js";
import { formatNumber } from "../../physics/display.js";
import type { Figure } from "../../physics/figure.js";
import { formatApart } from "../../physics/working.js";
import type { Place } from "../../place.js";
import { group, line, type Paint, type Picture, rect, type Shape, text } from "../picture.js";
import { fitText } from "../text-width.js";
import type { Table } from "./table.js";

/** How much of its limit one check uses: 1 is all of it. */
export interface Margin {
  /** "S1 string-voltage", with a number where that is not the only one. */
  readonly id: string;
  readonly place: Place;
  readonly rule: string;
  readonly thing: string;
  readonly used: number;
  readonly outcome: "pass" | "finding" | "departure";
  /** "498.1 V of 600 V". */
  readonly words: string;
  readonly against?: string;
}

export interface Margins {
  /** The tightest first. */
  readonly margins: readonly Margin[];
  /** Passes and findings that compare no figures. */
  readonly withoutFigures: number;
  readonly notChecked: number;
}

export function marginsOf(assessment: Assessment): Margins {
  const margins: Omit<Margin, "id">[] = [];
  let [withoutFigures, notChecked] = [0, 0];
  for (const check of assessment.checks) {
    const margin = marginOf(check);
    const { outcome } = check.outcome;
    if (margin) margins.push(margin);
    else if (outcome === "not-checked") notChecked++;
    else if (outcome !== "not-applicable") withoutFigures++;
  }
  margins.sort((a, b) => b.used - a.used);
  return { margins: named(margins), withoutFigures, notChecked };
}

function named(margins: readonly Omit<Margin, "id">[]): Margin[] {
  const counted = new Map<string, number>();
  return margins.map((margin) => {
    const name = `${margin.thing} ${margin.rule}`;
    const count = (counted.get(name) ?? 0) + 1;
    counted.set(name, count);
    return { id: count === 1 ? name : `${name} ${count}`, ...margin };
  });
}

function marginOf({ rule, thing, outcome }: Check): Omit<Margin, "id"> | undefined {
  const about = { rule: rule.id, thing: label(thing), place: placeOf({ thing }) };
  if (outcome.outcome === "pass") {
    const { value, limit, utilisation, against } = outcome;
    if (utilisation === undefined || !Number.isFinite(utilisation) || !value || !limit) return undefined;
    return { ...about, used: utilisation, outcome: "pass", words: compared(value, limit), against };
  }
  if (outcome.outcome !== "finding" && outcome.outcome !== "departure") return undefined;
  const { value, limit, spot } = outcome.outcome === "finding" ? outcome : outcome.finding;
  if (!value || !limit || value.value === 0 || limit.value === 0) return undefined;
  // What is found lies beyond its limit, above an upper one or below a lower one.
  const ratio = Math.abs(value.value / limit.value);
  const used = Math.max(ratio, 1 / ratio);
  const place = placeOfFinding(spot);
  return { ...about, place, used, outcome: outcome.outcome, words: compared(value, limit) };
}

function compared(value: Figure, limit: Figure): string {
  const [own, bound] = formatApart(value, limit);
  return `${own} against ${bound}`;
}

const left = 230;
const barWidth = 330;
const right = 250;
const pitch = 17;
const paints: Readonly<Record<Margin["outcome"], Paint>> = { pass: "first", finding: "error", departure: "note" };

/** A bar for each check that compares two figures. `most`: only so many; how many more there are is said. */
export function marginsPicture(assessment: Assessment, most = Number.POSITIVE_INFINITY): Picture {
  const { margins, withoutFigures, notChecked } = marginsOf(assessment);
  const shown = margins.slice(0, most);
  const top = 84;
  const bottom = top + shown.length * pitch;
  const full = barWidth / 1.25;
  const shapes: Shape[] = [
    text(20, 28, "How much of each limit is used", { size: 15, bold: true }),
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
  for (const [index, margin] of shown.entries()) shapes.push(barOf(margin, top + index * pitch, full));
  const rest: string[] = [];
  if (shown.length < margins.length) rest.push(`${margins.length - shown.length} more are not drawn`);
  if (withoutFigures > 0) rest.push(`${withoutFigures} checks compare no figures`);
  rest.push(`${notChecked} checks could not be made`);
  const words = `${rest.join("; ")}.`;
  shapes.push(text(20, bottom + 22, words, { size: 10, fill: "faint" }));
  return {
    width: left + barWidth + right,
    height: bottom + 38,
    title: "How much of each limit is used",
    description: `${shown.length} bars. ${words}`,
    shapes,
  };
}

/** The same in rows. */
export function marginsTable(assessment: Assessment): Table {
  return {
    caption: "How much of each limit is used, the tightest first",
    columns: ["thing", "rule", "used", "compared", "with", "outcome"],
    rows: marginsOf(assessment).margins.map(({ id, thing, rule, used, words, against = "", outcome }) => ({
      id,
      cells: [thing, rule, shareText(used), words, against, outcome],
    })),
  };
}

function shareText(used: number): string {
  return `${formatNumber(used * 100, 3)} %`;
}

function barOf({ id, rule, thing, used, outcome, words, against }: Margin, y: number, full: number): Shape {
  const width = Math.min(used, 1.25) * full;
  const share = shareText(used);
  const verdict = outcome === "pass" ? "" : `, ${outcome}`;
  return group(
    [
      text(left - 8, y + 11.5, fitText(`${thing} · ${rule}`, 10, left - 24), { size: 10, anchor: "end" }),
      rect(left, y + 2, Math.max(width, 1), pitch - 5, {
        fill: paints[outcome],
        opacity: outcome === "departure" ? 0.6 : 1,
      }),
      text(left + barWidth + 6, y + 11.5, fitText(`${share} · ${words}${verdict}`, 10, right - 12), {
        size: 10,
        fill: outcome === "pass" ? "ink" : paints[outcome],
      }),
    ],
    {
      id,
      sort: `margin ${outcome}`,
      label: `${thing}, ${rule}: ${share} used, ${words}${verdict}${against ? `, ${against}` : ""}`,
    },
  );
}
