import type { Source } from "../../physics/figure.js";
import { acLimits as international } from "../iec/ac-limits.js";
import { limit } from "../rule-set.js";
import { bs7671, microgenerators, protection, supplyVoltage } from "./sources.js";

const rise: Source = { title: "aim of UK designers for the generator's circuit", basis: "practice" };

/** The limits of the a.c. side in the British set. */
export const acLimits: typeof international = {
  ...international,
  acVoltageRise: limit(
    "acVoltageRise",
    1,
    rise,
    "Common UK practice; AS/NZS 4777.1 allows 2 %. The smaller is the default.",
  ),
  highestSupplyVoltage: limit("highestSupplyVoltage", 253, supplyVoltage),
  overVoltageTrip: limit("overVoltageTrip", 262.2, protection),
  minimumVoltageFactor: limit("minimumVoltageFactor", 0.95, bs7671("regulation 411.4.4, Cmin", "read")),
  touchVoltage: limit("touchVoltage", 50, bs7671("regulation 411.5.3", "read")),
  loopReadingShare: limit("loopReadingShare", 80, { ...bs7671("Appendix 3, readings with cold conductors", "read") }),
  leakageShare: limit("leakageShare", 30, bs7671("regulation 531.3.2", "read")),
  notifyCurrent: limit("notifyCurrent", 16, microgenerators),
};
