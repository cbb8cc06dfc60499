import type { Derived, Figure, Given, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Sizes of protective and bonding conductors by table. All cross-sections in m², copper. */

export interface ProtectiveSizes {
  /** Of the table by line conductor. */
  readonly source: Source;
  /** Up to here as large as the line conductor; up to the next bound as large as this one; above, half. */
  readonly equalUpTo: Given;
  readonly fixedUpTo: Given;
  /** Laid apart from the live conductors: least size with, and without, protection against mechanical damage. */
  readonly apartProtected: Given;
  readonly apartUnprotected: Given;
  /** To an earth electrode that alone limits the fault current. */
  readonly toElectrode: Given;
  readonly bonding: BondingSizes;
}

export interface BondingSizes {
  /** Main bonding where PME conditions hold, by the supply's neutral; absent: the rule set has no such table. */
  readonly byNeutral?: readonly { readonly upTo: number; readonly size: Given }[];
  /** Otherwise half the earthing conductor, within these bounds. */
  readonly least: Given;
  readonly most: Given;
  readonly source: Source;
}

/** Protective conductor by the size of the line conductor, m². */
export function protectiveSize(line: Figure, sizes: ProtectiveSizes): Derived {
  const { source, equalUpTo, fixedUpTo } = sizes;
  const terms = [as("Sline", line)];
  if (reaches(equalUpTo.value, line.value)) return derive("S", line.value, "area", "mm2", "Sline", terms, source);
  if (reaches(fixedUpTo.value, line.value))
    return derive("S", equalUpTo.value, "area", "mm2", "Sequal", [as("Sequal", equalUpTo)], source);
  return derive("S", line.value / 2, "area", "mm2", "Sline / 2", terms, source);
}

/** Main bonding conductor (m²) of a TN-C-S supply, by its neutral (m²); undefined where the rule set has no table. */
export function bondingByNeutral(neutral: Figure, sizes: BondingSizes): Derived | undefined {
  const row = sizes.byNeutral?.find(({ upTo }) => reaches(upTo, neutral.value));
  if (!row) return undefined;
  return derive("S", row.size.value, "area", "mm2", "S(SN)", [as("SN", neutral)], row.size.origin.source);
}

/** Main bonding conductor (m²) elsewhere: half the earthing conductor that is needed (m²), within bounds. */
export function bondingByEarthing(earthing: Figure, sizes: BondingSizes): Derived {
  const { least, most, source } = sizes;
  const terms = [as("Smin", least), as("SE", earthing), as("Smax", most)];
  const value = Math.min(Math.max(earthing.value / 2, least.value), most.value);
  return derive("S", value, "area", "mm2", "max(Smin; min(SE / 2; Smax))", terms, source);
}

/** Whether a bound holds a cross-section, rid of the rounding error of the unit conversion. */
function reaches(bound: number, size: number): boolean {
  return size <= bound * (1 + 1e-9);
}
