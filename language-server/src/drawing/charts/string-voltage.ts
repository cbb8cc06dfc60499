import type { Assessment } from "../../assessment/assessment.js";
import type { PvArray, StringPath } from "../../circuit/array.js";
import { label } from "../../design/facts.js";
import { formatValue } from "../../physics/display.js";
import type { Given } from "../../physics/figure.js";
import { stated } from "../../physics/make.js";
import { openCircuitVoltageAt } from "../../physics/string-voltage.js";
import { formatFigure } from "../../physics/working.js";
import { moduleOf, modulesInSeries } from "../../rules/array-figures.js";
import type { Judge } from "../../rules/judge.js";
import { hottestCell, operatingModule } from "../../rules/operating-voltage.js";
import { type VoltageLimit, voltageLimits } from "../../rules/voltage-limits.js";
import { attempt } from "./attempt.js";
import type { Curve, Plot } from "./plot.js";
import type { Table } from "./table.js";

const zero = 273.15;
/** Colder than any air that was ever measured near the ground, K. */
const coldestAir = zero - 95;

/**
 * Voltage of one string against the temperature of its cells: open circuit and maximum power, the tracker's window and
 * every d.c. limit, with the range that the design is made for. Undefined where the open-circuit voltage is not known.
 */
export function stringVoltagePlot(assessment: Assessment, path: StringPath, array: PvArray): Plot | string {
  const { judge } = assessment;
  const { string } = path;
  const known = attempt(() => {
    const module = moduleOf(string);
    const [voltage, coefficient] = judge.need(
      [module, "open-circuit-voltage"],
      [module, "open-circuit-voltage-coefficient"],
    );
    return { modules: modulesInSeries(string), voltage, coefficient };
  });
  if (typeof known === "string") return known;
  const { coefficient, ...series } = known;
  const open = (cell: number): number => openCircuitVoltageAt(series, coefficient, kelvin(cell)).value;

  const lowest = judge.siteQuantity("lowest-temperature");
  const hottest = attempt(() => hottestCell(string, judge));
  const hot = typeof hottest === "string" ? undefined : hottest.value;
  const from = tens((lowest?.value ?? zero - 10) - zero - 15, Math.floor);
  const to = tens((hot ?? zero + 70) - zero + 8, Math.ceil);
  const { limits, missing, reasons } = voltageLimits(path, array, judge);
  const grouped = grouping(limits);
  const top = open(zero + from) * 1.12;
  const shown = grouped.filter(({ volts }) => volts <= top * 1.35);
  const beyond = grouped.filter((each) => !shown.includes(each));
  const power = attempt(() => powerAt(path, judge));
  const window = array.tracker && judge.range(array.tracker, "voltage-range");
  const start = array.tracker && judge.quantity(array.tracker, "start-voltage");
  const lowestLimit = grouped[0];
  const crossing = lowestLimit && crossingTemperature(open, lowestLimit.volts);
  const isInside = crossing !== undefined && crossing - zero >= from && crossing - zero <= to;

  const curveOf = (value: (cell: number) => number): Pick<Curve, "width" | "unit" | "at" | "points"> => {
    const at = (cell: number): number => value(zero + cell);
    return { width: 2.4, unit: "V", at, points: [from, to].map((cell) => ({ x: cell, y: at(cell) })) };
  };
  const notes: string[] = [];
  if (lowestLimit && crossing !== undefined) notes.push(crossingText(string.id, lowestLimit, crossing, lowest));
  if (beyond.length > 0) notes.push(`Higher limits, not drawn: ${beyond.map(({ words }) => words).join("; ")}.`);
  if (typeof power === "string") notes.push(`Voltage at maximum power not drawn: ${power}.`);
  if (!lowest) notes.push("The design range is not shaded: the site's lowest-temperature is not stated.");
  else if (typeof hottest === "string") notes.push(`The design range is not shaded: ${hottest}.`);
  const unknown = [...missing.map(({ thing, property }) => `${label(thing)} ${property}`), ...reasons];
  if (unknown.length > 0) notes.push(`Limits not known: ${unknown.join(", ")}.`);
  return {
    title: `${string.id}: string voltage against cell temperature`,
    subtitle: `${string.count} × ${string.part?.name ?? "?"}${array.tracker ? ` on ${array.tracker.id}` : ""}`,
    x: { words: "cell temperature in °C", from, to },
    y: { words: "string voltage in V", from: 0, to: nice(Math.max(top, ...shown.map(({ volts }) => volts * 1.05))) },
    curves: [
      { words: "open circuit", paint: "first", ...curveOf(open) },
      ...(typeof power === "string"
        ? []
        : [{ words: "maximum power", paint: "second" as const, dash: [8, 4], ...curveOf(power) }]),
    ],
    limits: [
      ...shown.map(({ volts, words }) => ({ y: volts, words, isStrict: true })),
      ...(start ? [{ y: start.value, words: `${formatFigure(start)} start of tracker`, isStrict: false }] : []),
    ],
    bands: [
      ...(lowest && hot !== undefined
        ? [{ along: "x" as const, from: lowest.value - zero, to: hot - zero, words: "design range" }]
        : []),
      ...(window
        ? [
            {
              along: "y" as const,
              from: window.low.value,
              to: window.high.value,
              words: `tracker window ${formatFigure(window.low)} to ${formatFigure(window.high)}`,
            },
          ]
        : []),
    ],
    points: [
      ...(lowest
        ? [
            {
              x: lowest.value - zero,
              y: open(lowest.value),
              words: `${volts(open(lowest.value))} at ${celsius(lowest.value)}`,
            },
          ]
        : []),
      ...(isInside && lowestLimit
        ? [{ x: crossing - zero, y: lowestLimit.volts, words: `limit reached at ${celsius(crossing)}` }]
        : []),
    ],
    notes,
    tables: [limitsTable(string.id, limits, open), rangeTable(window, start, array.tracker?.id)],
  };
}

/** Every limit, those beyond the picture too, with the temperature at which it is reached. */
function limitsTable(id: string, limits: readonly VoltageLimit[], open: (cell: number) => number): Table {
  const rows = [...limits].sort((a, b) => a.figure.value - b.figure.value);
  return {
    caption: `Limits on the way of ${id}`,
    columns: ["what", "limit", "reached at a cell temperature of"],
    rows: rows.map(({ holder, figure }) => {
      const crossing = crossingTemperature(open, figure.value);
      const reached = crossing !== undefined && crossing >= coldestAir ? celsius(crossing) : "none that a site has";
      return { ...(holder.is !== "part" && { id: holder.id }), cells: [label(holder), formatFigure(figure), reached] };
    }),
  };
}

function rangeTable(window: Range | undefined, start: Given | undefined, tracker: string | undefined): Table {
  const row = (words: string, figure: Given): Table["rows"][number] => ({
    ...(tracker !== undefined && { id: tracker }),
    cells: [words, formatFigure(figure)],
  });
  return {
    caption: `Tracker ${tracker ?? ""}`,
    columns: ["what", "voltage"],
    rows: [
      ...(window ? [row("window from", window.low), row("window to", window.high)] : []),
      ...(start ? [row("start", start)] : []),
    ],
  };
}

function powerAt({ string }: StringPath, judge: Judge): (cell: number) => number {
  const { voltage, coefficient } = operatingModule(moduleOf(string), judge);
  const series = { modules: modulesInSeries(string), voltage };
  return (cell) => openCircuitVoltageAt(series, coefficient, kelvin(cell)).value;
}

function kelvin(cell: number): Given {
  return stated("T", cell, "temperature", "degC", "along the axis");
}

type Range = NonNullable<ReturnType<Judge["range"]>>;

interface Grouped {
  readonly volts: number;
  readonly words: string;
}

/** Limits of one value in one line, the lowest first. */
function grouping(limits: readonly VoltageLimit[]): Grouped[] {
  const byValue = new Map<number, Set<string>>();
  for (const { figure, holder } of limits)
    byValue.set(figure.value, (byValue.get(figure.value) ?? new Set()).add(label(holder)));
  return [...byValue]
    .sort(([a], [b]) => a - b)
    .map(([value, holders]) => ({ volts: value, words: `${volts(value)} ${[...holders].join(", ")}` }));
}

/** Straight lines cross once; undefined where the voltage does not fall with temperature. */
function crossingTemperature(open: (cell: number) => number, limit: number): number | undefined {
  const [at0, at100] = [open(zero), open(zero + 100)];
  const slope = (at100 - at0) / 100;
  if (!(slope < 0)) return undefined;
  const cell = zero + (limit - at0) / slope;
  return cell > 0 ? cell : undefined;
}

function crossingText(id: string, { words }: Grouped, crossing: number, lowest: Given | undefined): string {
  if (crossing < coldestAir)
    return `At no temperature that a site has does the open-circuit voltage of ${id} reach the lowest limit, ${words}.`;
  const sentence = `Below ${celsius(crossing)} the open-circuit voltage of ${id} is above the lowest limit, ${words}.`;
  return lowest ? `${sentence} The design goes down to ${celsius(lowest.value)}.` : sentence;
}

function celsius(kelvins: number): string {
  return formatValue(kelvins, "temperature", "degC", 3);
}

function volts(value: number): string {
  return formatValue(value, "voltage", "V", 4);
}

function tens(value: number, by: (value: number) => number): number {
  return by(value / 10) * 10;
}

function nice(value: number): number {
  return Math.ceil(value / 50) * 50;
}
