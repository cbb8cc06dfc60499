import type { LimitKey } from "../../design/schema/limits.js";
import type { Source } from "../../physics/figure.js";
import { limits as international } from "../iec/limits.js";
import { type Limit, limit } from "../rule-set.js";
import { acLimits } from "./ac-limits.js";

const guide: Source = {
  title: "DTI and MCS guides to PV installation",
  clause: "drop from array to inverter below 3 % at standard test conditions",
  basis: "read",
};
const aim: Source = { title: "aim of UK designers for the d.c. side", basis: "practice" };
const building: Source = { title: "BS 7671:2018", clause: "712.414.101", basis: "memory" };

export const limits: Readonly<Record<LimitKey, Limit>> = {
  ...international,
  dwellingDcVoltage: limit("dwellingDcVoltage", 1000, building),
  otherBuildingDcVoltage: limit("otherBuildingDcVoltage", 1000, building),
  dcDropDesign: limit("dcDropDesign", 1, aim, "Designers differ between 1 % and 2 %; the stricter is the default."),
  dcDropCeiling: limit("dcDropCeiling", 3, guide),
  ...acLimits,
};
