import type { LimitKey } from "../../design/schema/limits.js";
import type { Source } from "../../physics/figure.js";
import { type Limit, limit } from "../rule-set.js";
import { acLimits } from "./ac-limits.js";
import * as source from "./sources.js";

const drop: Source = {
  title: "UTE C 15-712-1",
  clause: "voltage drop at most 3 %, 1 % recommended",
  basis: "read",
};

/** The limits of the international set; a national set takes these and replaces its own. */
export const limits: Readonly<Record<LimitKey, Limit>> = {
  shortCircuitFactor: limit("shortCircuitFactor", 1.25, source.currentFactor),
  dwellingDcVoltage: limit("dwellingDcVoltage", 1000, source.buildingVoltage),
  otherBuildingDcVoltage: limit("otherBuildingDcVoltage", 1000, source.buildingVoltage),
  groundMountedDcVoltage: limit("groundMountedDcVoltage", 1500, source.buildingVoltage),
  dcDropDesign: limit("dcDropDesign", 1, drop, "Designers differ between 1 % and 2 %; the published advice is 1 %."),
  dcDropCeiling: limit("dcDropCeiling", 3, drop),
  hotConductorTemperature: limit(
    "hotConductorTemperature",
    90,
    source.pvCable,
    "What the insulation stands in continuous use: no array cable runs hotter, so no drop is larger.",
  ),
  dcAcRatio: limit("dcAcRatio", 1.5, source.practice),
  parallelPlaneDifference: limit("parallelPlaneDifference", 5, source.practice),
  surgeProtectionFactor: limit("surgeProtectionFactor", 80, source.protectionLevel),
  surgeSecondDistance: limit("surgeSecondDistance", 10, source.secondDevice),
  surgeLeadLength: limit("surgeLeadLength", 0.5, source.leads),
  surgeEarthConductor: limit("surgeEarthConductor", 6, source.surgeEarth),
  surgeEarthConductorType1: limit("surgeEarthConductorType1", 16, source.surgeEarth),
  readingVoltageTolerance: limit("readingVoltageTolerance", 5, source.stringCompare),
  readingCurrentTolerance: limit("readingCurrentTolerance", 5, source.stringCompare),
  lowestReadingIrradiance: limit("lowestReadingIrradiance", 400, source.readingLight),
  ...acLimits,
};
