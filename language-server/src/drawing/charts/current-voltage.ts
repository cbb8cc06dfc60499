import type { Assessment } from "../../assessment/assessment.js";
import type { PvArray } from "../../circuit/array.js";
import type { Item } from "../../design/things.js";
import { formatNumber, formatValue } from "../../physics/display.js";
import { parametersAt } from "../../physics/module-model.js";
import { currentAt, type DiodeParameters, openCircuitVoltage } from "../../physics/single-diode.js";
import { inSeries, ParallelStrings } from "../../physics/string-curve.js";
import { formatFigure } from "../../physics/working.js";
import { moduleOf, modulesInSeries } from "../../rules/array-figures.js";
import { modelOf } from "../../rules/expected-string.js";
import { type Judge, NotKnown } from "../../rules/judge.js";
import { attempt } from "./attempt.js";
import type { Curve, Plot } from "./plot.js";

/** In the plane of the modules, W/m², and the cells' temperature, K. */
export interface Conditions {
  readonly irradiance: number;
  readonly cell: number;
}
export const standardConditions: Conditions = { irradiance: 1000, cell: 298.15 };
/** Light between clouds can be stronger than the sun alone; a cell in a module cannot be colder or hotter than this. */
export const possibleConditions = {
  irradiance: { from: 50, to: 1500 },
  cell: { from: 228.15, to: 373.15 },
} as const;

const samples = 120;

/**
 * Current against voltage of everything on one tracker, from the single-diode model; strings in parallel are summed at
 * one voltage, equal or not. A string where the model lacks something is said in words, and then there is no plot.
 */
export function currentVoltagePlot(
  assessment: Assessment,
  array: PvArray,
  conditions: Conditions = standardConditions,
): Plot | string {
  const { judge } = assessment;
  const strings = attempt(() =>
    array.strings.map(({ string }) => ({ string, diode: diodeOf(string, conditions, judge) })),
  );
  if (typeof strings === "string") return strings;
  if (strings.length === 0) return "not known: no string is wired to it";
  const together = new ParallelStrings(strings.map(({ diode }) => diode));
  const open = together.openCircuitVoltage();
  const widest = Math.max(...strings.map(({ diode }) => openCircuitVoltage(diode)));
  const short = together.shortCircuitCurrent();
  const best = together.maxPowerPoint();
  const { tracker } = array;
  const limit = tracker && judge.quantity(tracker, "max-current");
  const shortLimit = tracker && judge.quantity(tracker, "max-short-circuit-current");
  const window = tracker && judge.range(tracker, "voltage-range");
  const alike = groups(strings);
  const single = (diode: DiodeParameters): Pick<Curve, "unit" | "at" | "points"> => {
    const end = openCircuitVoltage(diode);
    return curveOf(end, (voltage) => currentAt(diode, voltage, end));
  };
  return {
    title: `${array.id}: current against voltage`,
    subtitle: `Single-diode model at ${formatNumber(conditions.irradiance)} W/m² and cells at ${formatValue(conditions.cell, "temperature", "degC")}`,
    x: { words: "voltage in V", from: 0, to: Math.ceil((widest * 1.08) / 20) * 20 },
    y: {
      words: "current in A",
      from: 0,
      to: ceiling(Math.max(short, limit?.value ?? 0, shortLimit?.value ?? 0) * 1.12),
    },
    curves: [
      {
        words: wholeText(strings),
        paint: "first",
        width: 2.6,
        ...curveOf(open, (voltage) => together.currentAt(voltage)),
      },
      ...(strings.length < 2
        ? []
        : alike.map(
            ({ ids, diode }, index): Curve => ({
              words: ids.length === 1 ? `${ids[0]} by itself` : `each of ${ids.join(", ")}`,
              paint: (["second", "third", "fourth"] as const)[index % 3]!,
              dash: [
                [8, 4],
                [2, 3],
                [10, 3, 2, 3],
              ][index % 3]!,
              width: 1.6,
              ...single(diode),
            }),
          )),
    ],
    limits: [
      ...(limit ? [{ y: limit.value, words: `${formatFigure(limit)} operating limit`, isStrict: false }] : []),
      ...(shortLimit
        ? [{ y: shortLimit.value, words: `${formatFigure(shortLimit)} short-circuit limit`, isStrict: true }]
        : []),
    ],
    bands: window
      ? [
          {
            along: "x",
            from: window.low.value,
            to: window.high.value,
            words: `tracker window ${formatFigure(window.low)} to ${formatFigure(window.high)}`,
          },
        ]
      : [],
    points: [
      { x: best.voltage, y: best.current, words: `${formatNumber((best.voltage * best.current) / 1000, 4)} kW` },
    ],
    notes: [
      `Isc ${formatNumber(short, 4)} A, Uoc ${formatNumber(open, 4)} V; maximum power at ${formatNumber(best.voltage, 4)} V and ${formatNumber(best.current, 4)} A.`,
      ...losses(strings, best.voltage * best.current),
    ],
    tables: [
      {
        caption: `${array.id} under these conditions`,
        columns: ["what", "value"],
        rows: [
          { cells: ["short-circuit current", `${formatNumber(short, 4)} A`] },
          { cells: ["open-circuit voltage", `${formatNumber(open, 4)} V`] },
          { cells: ["voltage at maximum power", `${formatNumber(best.voltage, 4)} V`] },
          { cells: ["current at maximum power", `${formatNumber(best.current, 4)} A`] },
          { cells: ["maximum power", `${formatNumber((best.voltage * best.current) / 1000, 4)} kW`] },
          ...(limit ? [{ cells: ["operating limit of the tracker", formatFigure(limit)] }] : []),
          ...(shortLimit ? [{ cells: ["short-circuit limit of the tracker", formatFigure(shortLimit)] }] : []),
        ],
      },
    ],
  };
}

interface Modelled {
  readonly string: Item;
  readonly diode: DiodeParameters;
}

function diodeOf(string: Item, { irradiance, cell }: Conditions, judge: Judge): DiodeParameters {
  const module = moduleOf(string);
  const count = modulesInSeries(string).value;
  const model = modelOf(module, judge);
  if (!model) throw new NotKnown([], `no single-diode model fits the data sheet of ${module.name}`);
  return inSeries(parametersAt(model, irradiance, cell), count);
}

/** Strings of one module and one count have one curve. */
function groups(strings: readonly Modelled[]): { readonly ids: string[]; readonly diode: DiodeParameters }[] {
  const found = new Map<string, { ids: string[]; diode: DiodeParameters }>();
  for (const { string, diode } of strings) {
    const key = `${string.part?.name} ${string.count}`;
    const own = found.get(key);
    if (own) own.ids.push(string.id);
    else found.set(key, { ids: [string.id], diode });
  }
  return [...found.values()];
}

function wholeText(strings: readonly Modelled[]): string {
  const ids = strings.map(({ string }) => string.id);
  return ids.length === 1 ? ids[0]! : `${ids.join(" + ")} in parallel`;
}

/** What unequal strings lose by working at one voltage. */
function losses(strings: readonly Modelled[], together: number): string[] {
  if (groups(strings).length < 2) return [];
  let apart = 0;
  for (const { diode } of strings) {
    const { voltage, current } = new ParallelStrings([diode]).maxPowerPoint();
    apart += voltage * current;
  }
  const share = formatValue(1 - together / apart, "ratio", "%", 3);
  return [
    `Each at its own maximum the strings would give ${formatNumber(apart / 1000, 4)} kW: together they lose ${share}.`,
  ];
}

/** Up to the open-circuit voltage; beyond it nothing flows out. */
function curveOf(end: number, value: (voltage: number) => number): Pick<Curve, "unit" | "at" | "points"> {
  const at = (voltage: number): number => (voltage > end ? 0 : Math.max(0, value(voltage)));
  // Closer together towards the open-circuit voltage, where the curve bends.
  const points = Array.from({ length: samples + 1 }, (_, index) => {
    const x = end * (1 - (1 - index / samples) ** 2);
    return { x, y: at(x) };
  });
  return { unit: "A", at, points };
}

function ceiling(value: number): number {
  return value > 50 ? Math.ceil(value / 10) * 10 : Math.ceil(value / 2) * 2;
}
