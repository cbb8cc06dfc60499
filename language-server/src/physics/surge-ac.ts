import { fromSi } from "@sunwright/grammar";
import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

/** Surge protection on the a.c. side: what a device must stand for good, and how likely a surge does harm. */

const continuous: Source = {
  title: "IEC 60364-5-53",
  clause: "534.4.4.3, Uc of devices between line and earth, 1.1 · U0",
  basis: "memory",
};

/** Least continuous voltage Uc (V) of a device between line and earth, from the voltage that may stand there (V). */
export function leastContinuousVoltage(factor: Figure, voltage: Figure): Derived {
  const terms = [as("f", factor), as("U", voltage)];
  return derive("Uc,min", factor.value * voltage.value, "voltage", "V", "f · U", terms, continuous);
}

const risk: Source = {
  title: "IEC 60364-4-44:2015",
  clause: "443.5, calculated risk level CRL = fenv / (LP · Ng)",
  basis: "memory",
};

/**
 * Calculated risk level, a number: the smaller, the likelier a surge does harm. `environment` is the factor fenv of the
 * surroundings, `line` the length of the supply line that counts (m), `flashDensity` an SI figure.
 */
export function calculatedRiskLevel(environment: Figure, line: Figure, flashDensity: Figure): Derived {
  const perYear = fromSi(flashDensity.value, "/km2/yr");
  const value = environment.value / ((line.value / 1000) * perYear);
  const terms = [as("fenv", environment), as("LP", line), as("Ng", flashDensity)];
  return derive("CRL", value, "number", "", "fenv / (LP · Ng)", terms, risk);
}
