import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

const leads: Source = {
  title: "IEC 60364-5-53, section 534",
  clause: "total length of the connecting leads of a surge protective device",
  basis: "read",
};

/** Total length of the leads of a surge protective device, m: to the live conductor and to earth. */
export function leadLength(toLine: Figure, toEarth: Figure): Derived {
  const terms = [as("d1", toLine), as("d2", toEarth)];
  return derive("d", toLine.value + toEarth.value, "length", "m", "d1 + d2", terms, leads);
}
