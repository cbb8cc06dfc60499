import { buildingVoltage } from "./building-voltage.js";
import type { Rule } from "./rule.js";
import { stringVoltage } from "./string-voltage.js";
import { trackerWindow } from "./tracker-window.js";

/** Every rule, in the order of the catalogue. Pages, tables, completion and the assessment all read this list. */
export const rules: readonly Rule[] = [stringVoltage, buildingVoltage, trackerWindow];
