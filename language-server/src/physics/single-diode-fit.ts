import { standardCellTemperature } from "./constants.js";
import { type ModuleModel, saturationFactor } from "./module-model.js";
import { bracketedSecant } from "./root.js";
import { type DiodeParameters, maxPowerPoint } from "./single-diode.js";

/** What a data sheet says at standard test conditions: V, A; coefficients in V/K and A/K. */
export interface DataSheet {
  readonly openCircuitVoltage: number;
  readonly shortCircuitCurrent: number;
  readonly voltageAtMaxPower: number;
  readonly currentAtMaxPower: number;
  readonly voltageCoefficient: number;
  readonly currentCoefficient: number;
}

/** How far above 25 °C the voltage coefficient is met, K. */
const step = 2;
/** Uoc / a of silicon modules lies near 24; the search covers poor and superb ones. */
const slimmest = 10;
const fattest = 80;
const scans = 70;

/** How far the power of a curve without a shunt may miss the data sheet's before it is no model of the module. */
const powerSlack = 0.02;

export interface FittedModule extends ModuleModel {
  /** Whether the curve's highest power is exactly where the data sheet has it. */
  readonly exact: boolean;
}

/**
 * Five parameters that meet the data sheet: open circuit, short circuit, maximum power with zero slope of power, and
 * the temperature coefficient of Uoc.
 *
 * For given a and Rs the other three follow from linear equations; Rs is then the root of the slope of power and a
 * the root of the voltage coefficient, each in a bracket, so nothing depends on a lucky starting point. Rounded data
 * can ask for a negative shunt resistance; then the curve without a shunt is taken that goes through the same three
 * points and has the same coefficient, and the place of its highest power is a little off. Undefined for data that no
 * single diode meets.
 */
export function fitModule(sheet: DataSheet): FittedModule | undefined {
  const exact = search(sheet, withPowerPeak);
  if (exact) return { reference: exact, currentCoefficient: sheet.currentCoefficient, exact: true };
  const near = search(sheet, withoutShunt);
  if (!near) return undefined;
  const { voltage, current } = maxPowerPoint(near);
  const miss = (voltage * current) / (sheet.voltageAtMaxPower * sheet.currentAtMaxPower) - 1;
  if (Math.abs(miss) > powerSlack) return undefined;
  return { reference: near, currentCoefficient: sheet.currentCoefficient, exact: false };
}

/** A curve through the data sheet's points for a given ideality voltage; undefined where none is physical. */
type Family = (sheet: DataSheet, idealityVoltage: number) => DiodeParameters | undefined;

/** The member of a family that has the data sheet's voltage coefficient. */
function search(sheet: DataSheet, family: Family): DiodeParameters | undefined {
  const missAt = (a: number) => {
    const curve = family(sheet, a);
    return curve && coefficientMiss(sheet, curve);
  };
  let before: { a: number; miss: number } | undefined;
  for (let scan = 0; scan <= scans; scan++) {
    const a = sheet.openCircuitVoltage / (fattest * (slimmest / fattest) ** (scan / scans));
    const miss = missAt(a);
    if (before && miss !== undefined && before.miss > 0 !== miss > 0) {
      return family(
        sheet,
        bracketedSecant((x) => missAt(x) ?? Number.NaN, before.a, a),
      );
    }
    before = miss === undefined ? undefined : { a, miss };
  }
  return undefined;
}

/** How far the current at the open-circuit voltage expected a little above 25 °C is from zero, A. */
function coefficientMiss(sheet: DataSheet, p: DiodeParameters): number {
  const warm = standardCellTemperature + step;
  const voltage = sheet.openCircuitVoltage + sheet.voltageCoefficient * step;
  const warmA = (p.idealityVoltage * warm) / standardCellTemperature;
  const diode = p.saturationCurrent * saturationFactor(warm) * Math.expm1(voltage / warmA);
  return p.photocurrent + sheet.currentCoefficient * step - diode - voltage / p.shuntResistance;
}

/** At this resistance the points of highest power and of open circuit would be one: the equations have no answer. */
function largestResistance(sheet: DataSheet): number {
  return (0.999 * (sheet.openCircuitVoltage - sheet.voltageAtMaxPower)) / sheet.currentAtMaxPower;
}

/** The curve whose power is highest exactly at the data sheet's point. */
function withPowerPeak(sheet: DataSheet, a: number): DiodeParameters | undefined {
  const rs = bracketedSecant((x) => slopeMiss(sheet, a, x), 0, largestResistance(sheet));
  if (Number.isNaN(rs)) return undefined;
  const p = throughThreePoints(sheet, a, rs);
  return p.shuntResistance > 0 && p.saturationCurrent > 0 ? p : undefined;
}

/** The curve without a shunt through the data sheet's three points. */
function withoutShunt(sheet: DataSheet, a: number): DiodeParameters | undefined {
  const miss = (rs: number) => {
    const diode = sheet.voltageAtMaxPower + sheet.currentAtMaxPower * rs;
    const p = throughEnds(sheet, a, rs);
    return p.photocurrent - p.saturationCurrent * Math.expm1(diode / a) - sheet.currentAtMaxPower;
  };
  const rs = bracketedSecant(miss, 0, largestResistance(sheet));
  return Number.isNaN(rs) ? undefined : throughEnds(sheet, a, rs);
}

/** The curve without a shunt through open circuit and short circuit. */
function throughEnds(sheet: DataSheet, a: number, rs: number): DiodeParameters {
  const open = sheet.openCircuitVoltage;
  const short = sheet.shortCircuitCurrent;
  const scaled = short / (1 - Math.exp((short * rs - open) / a));
  return {
    photocurrent: -scaled * Math.expm1(-open / a),
    saturationCurrent: scaled * Math.exp(-open / a),
    seriesResistance: rs,
    shuntResistance: Number.POSITIVE_INFINITY,
    idealityVoltage: a,
  };
}

/** Imp / Ump less the conductance of the curve there: zero where power is highest. */
function slopeMiss(sheet: DataSheet, a: number, rs: number): number {
  const p = throughThreePoints(sheet, a, rs);
  const diode = sheet.voltageAtMaxPower + sheet.currentAtMaxPower * rs;
  const conductance = (p.saturationCurrent / a) * Math.exp(diode / a) + 1 / p.shuntResistance;
  return sheet.currentAtMaxPower / sheet.voltageAtMaxPower - conductance / (1 + rs * conductance);
}

/** IL, I0 and Rsh of the curve with given a and Rs through open circuit, short circuit and maximum power. */
function throughThreePoints(sheet: DataSheet, a: number, rs: number): DiodeParameters {
  const open = sheet.openCircuitVoltage;
  const short = sheet.shortCircuitCurrent;
  const current = sheet.currentAtMaxPower;
  const shortDiode = short * rs;
  const powerDiode = sheet.voltageAtMaxPower + current * rs;
  // Scaled by exp(−Uoc / a), or the exponentials of slim curves overflow.
  const atOpen = -Math.expm1(-open / a);
  const shortGap = 1 - Math.exp((shortDiode - open) / a);
  const powerGap = 1 - Math.exp((powerDiode - open) / a);
  const determinant = shortGap * (open - powerDiode) - powerGap * (open - shortDiode);
  const scaled = (short * (open - powerDiode) - current * (open - shortDiode)) / determinant;
  const conductance = (shortGap * current - powerGap * short) / determinant;
  return {
    photocurrent: scaled * atOpen + conductance * open,
    saturationCurrent: scaled * Math.exp(-open / a),
    seriesResistance: rs,
    shuntResistance: 1 / conductance,
    idealityVoltage: a,
  };
}
