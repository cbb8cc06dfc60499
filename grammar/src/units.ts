import type { Dimension } from "./dimensions.js";

/**
 * The units a quantity may be written in, each with the way to its dimension's SI unit.
 *
 * One row a unit; the lexer, the conversion, completion and syntax colouring all read this table.
 */
export interface Unit {
  /** The spelling with ASCII letters, case as in the SI: `mm2`, `degC`, `Mohm`. */
  readonly name: string;
  readonly dimension: Dimension;
  /** si = value · factor + offset; absent for a unit with its own conversion. */
  readonly factor?: number;
  readonly offset?: number;
  /** A unit that is no straight line, such as a wire gauge. */
  readonly toSi?: (value: number) => number;
  readonly fromSi?: (si: number) => number;
}

/** Metres in an inch: exact, by the international yard and pound agreement of 1959. */
const inch = 0.0254;
const foot = 12 * inch;
/** Julian year of 365.25 days. */
const year = 365.25 * 24 * 3600;

/**
 * Wire gauge: the diameter is 0.005 in · 92^((36 − n) / 39) (ASTM B258). The gauge grows as the wire gets thinner;
 * 1/0, 2/0, 3/0 and 4/0 are n = 0, −1, −2 and −3.
 */
function gaugeArea(gauge: number): number {
  const diameter = 0.005 * inch * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
}
function areaGauge(area: number): number {
  const diameter = Math.sqrt((area * 4) / Math.PI);
  return 36 - (39 * Math.log(diameter / (0.005 * inch))) / Math.log(92);
}

type Row = readonly [name: string, factor: number, offset?: number];

function rows(dimension: Dimension, list: readonly Row[]): Unit[] {
  return list.map(([name, factor, offset]) => ({
    name,
    dimension,
    factor,
    ...(offset === undefined ? {} : { offset }),
  }));
}

/** Every unit, the usual one of each dimension first. */
export const units: readonly Unit[] = [
  ...rows("voltage", [
    ["V", 1],
    ["kV", 1e3],
    ["mV", 1e-3],
  ]),
  ...rows("current", [
    ["A", 1],
    ["mA", 1e-3],
    ["kA", 1e3],
  ]),
  ...rows("power", [
    ["W", 1],
    ["kW", 1e3],
    ["MW", 1e6],
    ["Wp", 1],
    ["kWp", 1e3],
    ["VA", 1],
    ["kVA", 1e3],
  ]),
  ...rows("energy", [
    ["kWh", 3.6e6],
    ["Wh", 3600],
    ["MWh", 3.6e9],
  ]),
  ...rows("charge", [["Ah", 3600]]),
  ...rows("resistance", [
    ["ohm", 1],
    ["mohm", 1e-3],
    ["kohm", 1e3],
    ["Mohm", 1e6],
    ["Gohm", 1e9],
  ]),
  ...rows("length", [
    ["m", 1],
    ["cm", 1e-2],
    ["mm", 1e-3],
    ["km", 1e3],
    ["ft", foot],
    ["in", inch],
  ]),
  ...rows("area", [
    ["mm2", 1e-6],
    ["m2", 1],
  ]),
  { name: "AWG", dimension: "area", toSi: gaugeArea, fromSi: areaGauge },
  // A circular mil is the area of a circle one thousandth of an inch across; large US conductors are sold in 1,000s.
  ...rows("area", [["kcmil", 1e3 * (Math.PI / 4) * (inch / 1000) ** 2]]),
  ...rows("temperature", [
    ["degC", 1, 273.15],
    ["degF", 5 / 9, (459.67 * 5) / 9],
  ]),
  ...rows("temperature-difference", [["K", 1]]),
  ...rows("ratio", [["%", 1e-2]]),
  ...rows("ratio-per-kelvin", [
    ["%/K", 1e-2],
    ["%/degC", 1e-2],
    ["/K", 1],
    ["/degC", 1],
  ]),
  ...rows("voltage-per-kelvin", [
    ["mV/K", 1e-3],
    ["V/K", 1],
    ["mV/degC", 1e-3],
    ["V/degC", 1],
  ]),
  ...rows("current-per-kelvin", [
    ["mA/K", 1e-3],
    ["A/K", 1],
    ["mA/degC", 1e-3],
    ["A/degC", 1],
  ]),
  // mV/A/m is how voltage drop tables of cables are printed; it is a resistance per metre of run.
  ...rows("resistance-per-length", [
    ["ohm/km", 1e-3],
    ["mohm/m", 1e-3],
    ["ohm/m", 1],
    ["mV/A/m", 1e-3],
    ["ohm/kft", 1 / (1000 * foot)],
  ]),
  ...rows("angle", [["deg", Math.PI / 180]]),
  ...rows("time", [
    ["s", 1],
    ["ms", 1e-3],
    ["min", 60],
    ["h", 3600],
  ]),
  ...rows("frequency", [["Hz", 1]]),
  ...rows("irradiance", [
    ["W/m2", 1],
    ["kW/m2", 1e3],
  ]),
  ...rows("flash-density", [["/km2/yr", 1e-6 / year]]),
  ...rows("let-through", [
    ["A2s", 1],
    ["kA2s", 1e6],
  ]),
];

const byName = new Map(units.map((unit) => [unit.name, unit]));

const replacements: readonly (readonly [RegExp, string])[] = [
  [/[\u2126\u03a9]/g, "ohm"],
  [/\u2103/g, "degC"],
  [/\u2109/g, "degF"],
  [/[\u00b0\u00ba]/g, "deg"],
  [/\u00b2/g, "2"],
  [/[\u00b5\u03bc]/g, "u"],
  [/[\u2215\u2044]/g, "/"],
];

/** The ASCII spelling of a unit written with `Ω`, `°`, `²` or `µ`; other texts come back unchanged. */
export function normaliseUnit(text: string): string {
  let name = text;
  if (/[^ -~]/.test(text)) for (const [from, to] of replacements) name = name.replace(from, to);
  return name;
}

/** The unit written exactly so (`mm2` or `mm²`), or undefined. Letter case counts: `mohm` and `Mohm` differ by 10⁹. */
export function findUnit(text: string): Unit | undefined {
  return byName.get(text) ?? byName.get(normaliseUnit(text));
}

/** Units of a dimension, the usual one first. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return units.filter((unit) => unit.dimension === dimension);
}

function known(unit: string | Unit): Unit {
  if (typeof unit !== "string") return unit;
  const found = findUnit(unit);
  if (!found) throw new RangeError(`"${unit}" is not a unit`);
  return found;
}

/**
 * A value in a unit as SI (kelvin for temperatures, square metres for gauges). The empty unit is a plain number.
 * Throws RangeError for a unit that does not exist.
 */
export function toSi(value: number, unit: string | Unit): number {
  if (unit === "") return value;
  const { factor = 1, offset = 0, toSi: convert } = known(unit);
  if (convert) return convert(value);
  // Dividing by 1000 rounds once, multiplying by the nearest double to 0.001 rounds twice: 1.1 mV is 0.0011 V.
  const scaled = factor < 1 && Number.isInteger(1 / factor) ? value / (1 / factor) : value * factor;
  return scaled + offset;
}

/** The inverse of `toSi`; throws RangeError for a unit that does not exist. */
export function fromSi(si: number, unit: string | Unit): number {
  if (unit === "") return si;
  const { factor = 1, offset = 0, fromSi: convert } = known(unit);
  if (convert) return convert(si);
  const plain = si - offset;
  return factor < 1 && Number.isInteger(1 / factor) ? plain * (1 / factor) : plain / factor;
}

/** The unit as people print it: `mm²`, `°C`, `MΩ`. */
export function displayUnit(unit: string): string {
  return normaliseUnit(unit)
    .replace(/ohm/g, "Ω")
    .replace(/deg(?=[CF])/g, "°")
    .replace(/^deg$/, "°")
    .replace(/(?<=[mA])2/g, "²");
}
