import { type Dimension, displayUnit, fromSi, parseQuantity } from "@sunwright/grammar";
import { type Conditions, possibleConditions, standardConditions } from "../drawing/charts/current-voltage.js";
import { formatNumber } from "../physics/display.js";
import { one, type Parsed, UsageError } from "./option-values.js";

interface Condition {
  readonly option: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly example: string;
  readonly possible: { readonly from: number; readonly to: number };
}
const irradiance: Condition = {
  option: "--irradiance",
  dimension: "irradiance",
  unit: "W/m2",
  example: '--irradiance "800 W/m2"',
  possible: possibleConditions.irradiance,
};
const cell: Condition = {
  option: "--cell-temperature",
  dimension: "temperature",
  unit: "degC",
  example: '--cell-temperature="50 degC"',
  possible: possibleConditions.cell,
};

/** Under what a current-voltage chart is drawn; what is left out is as in standard test conditions. */
export function chartConditions(options: Parsed): Conditions | undefined {
  const given = { irradiance: options.irradiance, cell: options.cellTemperature };
  if (given.irradiance === undefined && given.cell === undefined) return undefined;
  if (!String(options.chart ?? "").startsWith("curve:"))
    throw new UsageError(
      "--irradiance and --cell-temperature are for charts of current against voltage: --chart curve:INV.pv1.",
    );
  return {
    irradiance: read(irradiance, given.irradiance) ?? standardConditions.irradiance,
    cell: read(cell, given.cell) ?? standardConditions.cell,
  };
}

function read({ option, dimension, unit, example, possible }: Condition, value: unknown): number | undefined {
  if (value === undefined) return undefined;
  const text = one(option, value).trim();
  const { si, dimension: own, problems } = parseQuantity(text);
  const [problem] = problems;
  if (problem) throw new UsageError(`${option}: ${problem.message}`);
  if (own !== dimension) throw new UsageError(`${option} cannot be ${text || "nothing"}. Write ${example}.`);
  if (si >= possible.from && si <= possible.to) return si;
  const [from, to] = [possible.from, possible.to].map((end) => formatNumber(fromSi(end, unit)));
  throw new UsageError(`${option} cannot be ${text}. It is from ${from} to ${to} ${displayUnit(unit)}.`);
}
