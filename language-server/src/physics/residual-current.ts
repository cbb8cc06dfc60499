import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Residual current devices: the type that an inverter calls for, and what leaks without a fault. */

/** From the fewest wave shapes to the most: each type detects all that the ones before it do. */
export const residualTypes = ["AC", "A", "F", "B"] as const;
export type ResidualType = (typeof residualTypes)[number];

/** Whether a type detects at least what another one does; false for a word that is no type. */
export function detects(type: string, needed: ResidualType): boolean {
  return residualTypes.indexOf(type as ResidualType) >= residualTypes.indexOf(needed);
}

export interface InverterFacts {
  /** At least simple separation between d.c. and a.c. side. */
  readonly separated?: boolean;
  /** Its maker declares that it does not call for type B. */
  readonly declared?: boolean;
}

export interface ResidualTypeRule {
  readonly source: Source;
  /** Least type where the inverter is separated or declared: never one that d.c. components blind. */
  readonly otherwise: ResidualType;
}

export interface ResidualTypeNeed {
  readonly type: ResidualType;
  readonly because: string;
  readonly source: Source;
}

/** The least type for the circuit of an inverter; undefined while neither fact that decides is known. */
export function residualTypeNeeded(inverter: InverterFacts, rule: ResidualTypeRule): ResidualTypeNeed | undefined {
  const { separated, declared } = inverter;
  const { source, otherwise } = rule;
  if (separated) return { type: otherwise, because: "its d.c. and a.c. sides are separated", source };
  if (declared) return { type: otherwise, because: "its maker declares that type B is not needed", source };
  if (separated === undefined || declared === undefined) return undefined;
  return { type: "B", because: "it is neither separated nor declared not to need it", source };
}

const leakage: Source = { title: "protective conductor currents of one device added", basis: "arithmetic" };

/** Standing leakage (A) of all that one RCD feeds. Added as numbers, which never gives less than their true sum. */
export function standingLeakage(currents: readonly Figure[]): Derived {
  let value = 0;
  for (const each of currents) value += each.value;
  const terms = currents.map((each) => as("IPE", each));
  return derive("IPE,sum", value, "current", "mA", "Σ IPE", terms, leakage);
}

const share: Source = { title: "BS 7671:2018 and IEC 60364-5-53", clause: "531.3.2", basis: "read" };

/** Standing leakage (A) that an RCD should carry at most: a share of IΔn (A). */
export function leakageBudget(residualCurrent: Figure, part: Figure): Derived {
  const terms = [as("f", part), as("IΔn", residualCurrent)];
  return derive("IPE,max", part.value * residualCurrent.value, "current", "mA", "f · IΔn", terms, share);
}

const noTrip: Source = { title: "IEC 61008-1", clause: "residual non-operating current", basis: "memory" };

/** Current (A) below which an RCD does not trip; from here on it may, at IΔn it must. */
export function nonOperatingCurrent(residualCurrent: Figure, part: Figure): Derived {
  const terms = [as("f", part), as("IΔn", residualCurrent)];
  return derive("IΔno", part.value * residualCurrent.value, "current", "mA", "f · IΔn", terms, noTrip);
}
