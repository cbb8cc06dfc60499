import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** What a bar, a switch or a conductor may have to carry where a generator feeds in beside the supply. */

const parallel: Source = {
  title: "BS 7671:2018 and IEC 60364-5-55",
  clause: "551.7.2, In of the protective device and Ig of the generators added",
  basis: "memory",
};

/**
 * Largest current (A) of a part that sources feed together and loads draw from: the rating of the device that limits the
 * supply, and what every generator adds. For a bar, for tails and switches between the joint and the loads, and for the
 * conductors of a circuit that a generator shares with loads (Iz ≥ In + Ig).
 */
export function joinedCurrent(supplyDevice: Figure, generators: readonly Figure[]): Derived {
  let value = supplyDevice.value;
  for (const each of generators) value += each.value;
  const terms = [as("In", supplyDevice), ...generators.map((each) => as("Ig", each))];
  return derive("I", value, "current", "A", generators.length === 0 ? "In" : "In + Σ Ig", terms, parallel);
}

const series: Source = { title: "one current flows through parts in series", basis: "arithmetic" };

/**
 * Largest current (A) of a part that lies in series between the supply's device and the joint with the generators: either
 * what the supply delivers or what the generators export, never both at once.
 */
export function throughCurrent(supplyDevice: Figure, generators: readonly Figure[]): Derived {
  let exported = 0;
  for (const each of generators) exported += each.value;
  const terms = [as("In", supplyDevice), ...generators.map((each) => as("Ig", each))];
  const formula = generators.length === 0 ? "In" : "max(In; Σ Ig)";
  return derive("I", Math.max(supplyDevice.value, exported), "current", "A", formula, terms, series);
}
