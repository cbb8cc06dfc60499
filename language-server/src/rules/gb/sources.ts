import type { Source } from "../../physics/figure.js";

/** The publications of the British set. `basis` says how well each clause is known. */

export function bs7671(clause: string, basis: Source["basis"] = "memory"): Source {
  return { title: "BS 7671:2018", clause, basis };
}

export function pas63100(clause: string): Source {
  return { title: "PAS 63100:2024 (a specification, not a statute)", clause, basis: "read" };
}

export const supplyVoltage: Source = {
  title: "ESQCR 2002",
  clause: "regulation 27, 230 V +10/−6 %",
  basis: "memory",
};
export const microgenerators: Source = {
  title: "EREC G98",
  clause: "up to and including 16 A per phase",
  basis: "read",
};
export const protection: Source = {
  title: "EREC G98",
  clause: "interface protection, first over-voltage stage, 1.14 · 230 V",
  basis: "memory",
};
