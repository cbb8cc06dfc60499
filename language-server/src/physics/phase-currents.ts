import type { LineCount } from "./ac-current.js";
import { arithmetic } from "./constants.js";
import type { Derived, Figure } from "./figure.js";
import { as, derive } from "./make.js";

/** What generating units, or loads, put on each line conductor. */

const lineNames = ["L1", "L2", "L3"] as const;
export type LineName = (typeof lineNames)[number];

export interface LineLoad {
  /** Per line conductor, A. */
  readonly current: Figure;
  readonly lines: LineCount;
  /** Which line a single-phase unit is on; needless on a single-phase supply. */
  readonly line?: LineName;
}

export type LineCurrents = ReadonlyMap<LineName, Derived>;

/**
 * Sum of the currents (A) on each line conductor of the supply. Undefined while a single-phase unit on a three-phase
 * supply does not say its line, and for a three-phase unit on a single-phase supply.
 */
export function lineCurrents(units: readonly LineLoad[], supply: LineCount): LineCurrents | undefined {
  const names = lineNames.slice(0, supply);
  const onLine = new Map(names.map((name) => [name, [] as Figure[]]));
  for (const { current, lines, line } of units) {
    if (lines > supply) return undefined;
    const own = lines === 3 ? names : supply === 1 ? names : line && [line];
    if (!own) return undefined;
    for (const name of own) onLine.get(name)?.push(current);
  }
  return new Map([...onLine].map(([name, currents]) => [name, sum(currents)]));
}

function sum(currents: readonly Figure[]): Derived {
  let value = 0;
  for (const each of currents) value += each.value;
  const terms = currents.map((each) => as("I", each));
  return derive("IΣ", value, "current", "A", terms.length === 0 ? "0" : "Σ I", terms, arithmetic);
}

/** The line that carries most, and its current. The first of equals. */
export function busiestLine(currents: LineCurrents): { readonly line: LineName; readonly current: Derived } {
  let found: { line: LineName; current: Derived } | undefined;
  for (const [line, current] of currents) if (!found || current.value > found.current.value) found = { line, current };
  if (!found) throw new RangeError("a supply has at least one line");
  return found;
}

/** Difference (A) between the line that carries most and the one that carries least; nought with a single line. */
export function lineDifference(currents: LineCurrents): Derived {
  const all = [...currents.values()].sort((a, b) => a.value - b.value);
  const least = all[0];
  const most = all[all.length - 1];
  if (!least || !most) throw new RangeError("a supply has at least one line");
  const terms = [as("Imost", most), as("Ileast", least)];
  return derive("ΔI", most.value - least.value, "current", "A", "Imost − Ileast", terms, arithmetic);
}
