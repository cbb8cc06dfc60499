import type { Source } from "../../physics/figure.js";

/** The publications that the two rule sets share. `basis` says how well each is known, clause by clause. */

export const currentFactor: Source = {
  title: "IEC 62548",
  clause: "highest short-circuit current, K_I at least 1.25",
  basis: "read",
};
export const coldTable: Source = {
  title: "UTE C 15-712-1",
  clause: "factor k by lowest temperature, crystalline silicon",
  basis: "read",
};
export const coldUnknown: Source = { title: "IEC 60364-7-712:2017", clause: "Annex B", basis: "memory" };
export const buildingVoltage: Source = {
  title: "IEC 60364-7-712",
  clause: "highest voltage of arrays on or in buildings",
  basis: "memory",
};
export const fuse62548: Source = {
  title: "IEC 62548",
  clause: "overcurrent protection of strings",
  basis: "read",
};
export const fuse712: Source = { title: "IEC 60364-7-712:2017", clause: "712.431.101 and .102", basis: "memory" };
export const criticalLength: Source = {
  title: "UTE C 15-712-1",
  clause: "critical length of the d.c. route, as in IEC 60364-7-712",
  basis: "read",
};
export const protectionLevel: Source = {
  title: "IEC 61643-12",
  clause: "protection level at most 80 % of the impulse withstand voltage",
  basis: "read",
};
export const secondDevice: Source = {
  title: "CLC/TS 50539-12",
  clause: "devices at both ends above 10 m of cable",
  basis: "read",
};
export const leads: Source = {
  title: "IEC 60364-5-53, section 534",
  clause: "total length of the connecting leads",
  basis: "read",
};
export const surgeEarth: Source = {
  title: "IEC 60364-5-53, section 534",
  clause: "cross-section of the earth conductor",
  basis: "memory",
};
export const impulseWithstand: Source = {
  title: "IEC 60364-7-712",
  clause: "impulse withstand voltages by highest open-circuit voltage",
  basis: "memory",
};
export const insulation: Source = { title: "IEC 62446-1", clause: "insulation resistance test", basis: "read" };
export const insulationMemory: Source = { ...insulation, basis: "memory" };
export const stringCompare: Source = {
  title: "IEC 62446-1",
  clause: "strings alike within 5 % under stable light",
  basis: "read",
};
export const readingLight: Source = {
  title: "IEC 62446-1",
  clause: "irradiance for measurements of current",
  basis: "memory",
};
export const pvCable: Source = {
  title: "EN 50618",
  clause: "highest conductor temperature in continuous use",
  basis: "memory",
};
export const practice: Source = { title: "practice of designers", basis: "practice" };
