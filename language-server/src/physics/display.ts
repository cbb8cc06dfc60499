import { type Dimension, displayUnit, fromSi } from "@sunwright/grammar";

/** How a number of SI units is printed: sensible digits, a real minus sign, a unit that the trade uses. */

/** Numbers worked out get at most four significant digits; stated ones come back as they were written. */
export const derivedDigits = 4;
export const statedDigits = 9;

/**
 * The unit to print a value in where nobody wrote one: the first row whose bound the size of the value reaches.
 * Bounds are in SI units, largest first.
 */
const byMagnitude: { readonly [D in Dimension]: readonly (readonly [bound: number, unit: string])[] } = {
  number: [[0, ""]],
  ratio: [[0, ""]],
  length: [
    [10_000, "km"],
    [0.1, "m"],
    [0, "mm"],
  ],
  area: [
    [0.01, "m2"],
    [0, "mm2"],
  ],
  voltage: [
    [10_000, "kV"],
    [0.1, "V"],
    [0, "mV"],
  ],
  current: [
    [1000, "kA"],
    [0.1, "A"],
    [0, "mA"],
  ],
  power: [
    [1e6, "MW"],
    [1000, "kW"],
    [0, "W"],
  ],
  energy: [
    [3.6e9, "MWh"],
    [3.6e6, "kWh"],
    [0, "Wh"],
  ],
  charge: [[0, "Ah"]],
  resistance: [
    [1e9, "Gohm"],
    [1e6, "Mohm"],
    [1000, "kohm"],
    [0.1, "ohm"],
    [0, "mohm"],
  ],
  "resistance-per-length": [[0, "mohm/m"]],
  temperature: [[0, "degC"]],
  "temperature-difference": [[0, "K"]],
  "ratio-per-kelvin": [[0, "%/K"]],
  "voltage-per-kelvin": [
    [1, "V/K"],
    [0, "mV/K"],
  ],
  "current-per-kelvin": [
    [1, "A/K"],
    [0, "mA/K"],
  ],
  angle: [[0, "deg"]],
  time: [
    [1, "s"],
    [0, "ms"],
  ],
  frequency: [[0, "Hz"]],
  irradiance: [[0, "W/m2"]],
  "flash-density": [[0, "/km2/yr"]],
  "let-through": [
    [1e6, "kA2s"],
    [0, "A2s"],
  ],
};

/** The unit that a value of a dimension is best printed in; zero is printed in the dimension's usual unit. */
export function unitByMagnitude(si: number, dimension: Dimension): string {
  const rows = byMagnitude[dimension];
  const size = Math.abs(si);
  if (size === 0 || Number.isNaN(size)) return rows.find(([bound]) => bound <= 1)?.[1] ?? "";
  return rows.find(([bound]) => size >= bound)?.[1] ?? "";
}

/** What meters of the trade show with three digits, and from a hundred up with a decimal as well: 21.7 A, 101.7 A. */
const asMetersShow: ReadonlySet<Dimension> = new Set(["voltage", "current", "length"]);
/** What no instrument shows, and no table gives, with more than three. */
const threeDigits: ReadonlySet<Dimension> = new Set([
  "resistance",
  "resistance-per-length",
  "area",
  "ratio",
  "time",
  "let-through",
]);

/**
 * The significant digits that a number worked out is worth. Of a temperature as many as reach its first decimal: no
 * thermometer on a roof shows more. Kilowatts keep four, being sums of what sheets print, and coefficients, because
 * they are multiplied by large differences.
 */
export function worthyDigits(si: number, dimension: Dimension, unit?: string): number {
  if (threeDigits.has(dimension)) return 3;
  const name = unit || unitByMagnitude(si, dimension);
  if (dimension !== "temperature" && name !== "W" && !asMetersShow.has(dimension)) return derivedDigits;
  const shown = Math.abs(fromSi(si, name));
  const toFirstDecimal = shown === 0 ? 1 : Math.floor(Math.log10(shown)) + 2;
  return dimension === "temperature" ? toFirstDecimal : Math.min(Math.max(toFirstDecimal, 3), derivedDigits);
}

/** A number with at most so many significant digits, never an exponent, and a real minus sign. */
export function formatNumber(value: number, digits = derivedDigits): string {
  if (Number.isNaN(value)) return "not a number";
  if (!Number.isFinite(value)) return value < 0 ? "−∞" : "∞";
  if (value === 0) return "0";
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(Math.max(digits - 1 - magnitude, 0), 20);
  // Digits left of the point are always all printed: 12,345 m is no 12,350 m.
  const text = Math.abs(value).toFixed(decimals);
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return value < 0 && trimmed !== "0" ? `−${trimmed}` : trimmed;
}

/** A value of SI units with its unit: `formatValue(0.00674, "ratio", "%")` is `0.674 %`. */
export function formatValue(
  si: number,
  dimension: Dimension,
  unit?: string,
  digits = worthyDigits(si, dimension, unit),
): string {
  const name = unit || unitByMagnitude(si, dimension);
  if (name === "AWG") return `${gauge(Math.round(fromSi(si, name)))} AWG`;
  const number = formatNumber(fromSi(si, name), digits);
  if (name === "") return number;
  // The SI sets its units off from the number, all but the degrees of an angle.
  return name === "deg" ? `${number}${displayUnit(name)}` : `${number} ${displayUnit(name)}`;
}

/** Wire gauges thicker than 1 are written as aughts: 0 is 1/0, −3 is 4/0. */
function gauge(size: number): string {
  return size > 0 ? String(size) : `${1 - size}/0`;
}
