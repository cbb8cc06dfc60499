import { bracketedSecant } from "./root.js";
import { currentAt, type DiodeParameters, type OperatingPoint, openCircuitVoltage } from "./single-diode.js";

/** Curves of several modules together. */

/** Like modules in series under the same light: one diode with n times the voltage. */
export function inSeries(module: DiodeParameters, modules: number): DiodeParameters {
  return {
    photocurrent: module.photocurrent,
    saturationCurrent: module.saturationCurrent,
    seriesResistance: module.seriesResistance * modules,
    shuntResistance: module.shuntResistance * modules,
    idealityVoltage: module.idealityVoltage * modules,
  };
}

/** Strings in parallel, equal or not; currents add at one voltage. */
export class ParallelStrings {
  private readonly open: readonly number[];

  constructor(private readonly strings: readonly DiodeParameters[]) {
    this.open = strings.map(openCircuitVoltage);
  }

  /** Total current at a voltage, A. A string above its own open-circuit voltage counts negative: it takes current. */
  currentAt(voltage: number): number {
    let total = 0;
    for (const [index, string] of this.strings.entries()) total += currentAt(string, voltage, this.open[index]);
    return total;
  }

  /** Voltage at which the strings' currents cancel, V: between the lowest and the highest of their own. */
  openCircuitVoltage(): number {
    const low = Math.min(...this.open);
    const high = Math.max(...this.open);
    return low === high ? low : bracketedSecant((voltage) => this.currentAt(voltage), low, high);
  }

  /** Total current at zero volts, A. */
  shortCircuitCurrent(): number {
    return this.currentAt(0);
  }

  /**
   * The highest of the power's humps: unequal strings can have several. The hump is found on a grid of 200 steps and
   * closed in on by golden sections; its power is good to twelve digits, its voltage to about six, as at any maximum.
   */
  maxPowerPoint(): OperatingPoint {
    const open = this.openCircuitVoltage();
    const power = (voltage: number) => voltage * this.currentAt(voltage);
    const stepWidth = open / 200;
    let best = 0;
    let bestPower = 0;
    for (let index = 1; index < 200; index++) {
      const value = power(index * stepWidth);
      if (value > bestPower) {
        best = index;
        bestPower = value;
      }
    }
    const voltage = highest(power, Math.max(best - 1, 0) * stepWidth, Math.min(best + 1, 200) * stepWidth);
    return { voltage, current: this.currentAt(voltage) };
  }
}

const golden = (Math.sqrt(5) - 1) / 2;

function highest(value: (x: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let atLeft = value(left);
  let atRight = value(right);
  while (high - low > 1e-9 * high) {
    if (atLeft < atRight) {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + golden * (high - low);
      atRight = value(right);
    } else {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - golden * (high - low);
      atLeft = value(left);
    }
  }
  return (low + high) / 2;
}
