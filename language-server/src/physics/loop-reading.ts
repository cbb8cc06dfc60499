import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

const reading: Source = {
  title: "BS 7671:2018, Appendix 3",
  clause: "readings with cold conductors at most 0.8 of the largest Zs",
  basis: "read",
};

/** Largest loop impedance (Ω) that may be read while the conductors are cold, as a share of the largest Zs (Ω). */
export function largestLoopReading(largest: Figure, share: Figure): Derived {
  const terms = [as("f", share), as("Zs,max", largest)];
  return derive("Zs,read,max", share.value * largest.value, "resistance", "ohm", "f · Zs,max", terms, reading);
}
