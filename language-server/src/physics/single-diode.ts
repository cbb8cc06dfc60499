import { bracketedNewton } from "./root.js";

/**
 * The single-diode equation of a module, string or cell:
 *
 *     I = IL − I0 · (exp((U + I · Rs) / a) − 1) − (U + I · Rs) / Rsh
 *
 * Everything is computed along the voltage of the diode itself, D = U + I · Rs: current and voltage are then plain
 * expressions of D, nothing overflows, and each question is one root in a known bracket.
 */
export interface DiodeParameters {
  /** Light-generated current IL, A. */
  readonly photocurrent: number;
  /** Dark saturation current I0, A. */
  readonly saturationCurrent: number;
  /** Rs, Ω. */
  readonly seriesResistance: number;
  /** Rsh, Ω; infinite for none. */
  readonly shuntResistance: number;
  /** a = n · Ns · k · T / q, V. */
  readonly idealityVoltage: number;
}

/** A point of the current-voltage curve, V and A. */
export interface OperatingPoint {
  readonly voltage: number;
  readonly current: number;
}

function currentAtDiode(p: DiodeParameters, diode: number): number {
  const shunt = diode / p.shuntResistance;
  return p.photocurrent - p.saturationCurrent * Math.expm1(diode / p.idealityVoltage) - shunt;
}
/** dI/dD, always negative. */
function slopeAtDiode(p: DiodeParameters, diode: number): number {
  const a = p.idealityVoltage;
  return -(p.saturationCurrent / a) * Math.exp(diode / a) - 1 / p.shuntResistance;
}

/** Open-circuit voltage, V; 0 in the dark. */
export function openCircuitVoltage(p: DiodeParameters): number {
  if (p.photocurrent <= 0) return 0;
  // Without a shunt the voltage has a closed form, and a shunt can only lower it.
  const highest = p.idealityVoltage * Math.log1p(p.photocurrent / p.saturationCurrent);
  return descend(
    (d) => currentAtDiode(p, d),
    (d) => slopeAtDiode(p, d),
    highest,
  );
}

/** Current at a voltage, A; negative beyond the open-circuit voltage. `openVoltage` saves solving for it again. */
export function currentAt(p: DiodeParameters, voltage: number, openVoltage = openCircuitVoltage(p)): number {
  if (p.seriesResistance === 0) return currentAtDiode(p, voltage);
  const start = Math.min(Math.max(voltage, openVoltage), voltage + p.seriesResistance * Math.max(p.photocurrent, 0));
  const diode = descend(
    (d) => voltage - d + p.seriesResistance * currentAtDiode(p, d),
    (d) => p.seriesResistance * slopeAtDiode(p, d) - 1,
    Math.max(start, voltage),
  );
  return currentAtDiode(p, diode);
}

/** Short-circuit current, A. */
export function shortCircuitCurrent(p: DiodeParameters): number {
  return currentAt(p, 0);
}

/** The point of highest power. */
export function maxPowerPoint(p: DiodeParameters): OperatingPoint {
  const rs = p.seriesResistance;
  const open = openCircuitVoltage(p);
  if (open === 0) return { voltage: 0, current: 0 };
  const short = currentAt(p, 0, open);
  // dP/dD; positive at short circuit, negative at open circuit.
  const gain = (d: number) => {
    const current = currentAtDiode(p, d);
    return current + slopeAtDiode(p, d) * (d - 2 * current * rs);
  };
  const change = (d: number) => {
    const slope = slopeAtDiode(p, d);
    const bend = -(p.saturationCurrent / p.idealityVoltage ** 2) * Math.exp(d / p.idealityVoltage);
    return slope + bend * (d - 2 * currentAtDiode(p, d) * rs) + slope * (1 - 2 * slope * rs);
  };
  const diode = bracketedNewton(gain, change, short * rs, open);
  const current = currentAtDiode(p, diode);
  return { voltage: diode - current * rs, current };
}

/**
 * Root of a decreasing function that bends downwards, from a point right of it: Newton's steps then approach it from
 * the right without ever crossing, and end when they no longer move.
 */
function descend(value: (x: number) => number, slope: (x: number) => number, start: number): number {
  let x = start;
  for (let step = 0; step < 500; step++) {
    const next = x - value(x) / slope(x);
    if (!(next < x)) return Math.min(next, x);
    x = next;
  }
  return x;
}
