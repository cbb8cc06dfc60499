import type { Derived, Figure, Source } from "./figure.js";
import { as, derive, tabulated } from "./make.js";

const tables: Source = { title: "BS 7671:2018", clause: "Tables 41.2 and 41.4, which allow for Cmin", basis: "memory" };

/** The factor for the lowest supply voltage that is in the printed loop impedances of fuses. */
const printedFactor = tabulated("Cmin", 0.95, "number", "", "in the printed loop impedances of fuses", tables);

/**
 * Current Ia (A) that melts a fuse within the time of a table of loop impedances, from the Zs printed there (Ω) and the
 * voltage to earth (V): the table read backwards.
 */
export function fuseOperatingCurrent(voltage: Figure, loop: Figure): Derived {
  const terms = [as("U0", voltage), printedFactor, as("Zs,max", loop)];
  const value = (voltage.value * printedFactor.value) / loop.value;
  return derive("Ia", value, "current", "A", "U0 · Cmin / Zs,max", terms, tables);
}
