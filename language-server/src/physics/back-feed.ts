import type { Derived, Figure, Source } from "./figure.js";
import { as, derive } from "./make.js";

const unfused: Source = {
  title: "IEC 62548",
  clause: "cables of strings without overcurrent protection carry the current of all the others",
  basis: "read",
};

/**
 * Current that the rest of an array can drive backwards into a fault beyond one of its cables, A: what all strings
 * give (`whole`) less what comes along the cable itself (`own`). Both are sums of Isc,max.
 */
export function backFeed(whole: Figure, own: Figure): Derived {
  const value = Math.max(whole.value - own.value, 0);
  return derive("Irev", value, "current", "A", "Iarray − Irun", [as("Iarray", whole), as("Irun", own)], unfused);
}
