import type { acLimitRows } from "../../design/schema/ac-limits.js";
import type { Source } from "../../physics/figure.js";
import { type Limit, limit } from "../rule-set.js";
import { practice } from "./sources.js";

type AcLimits = Readonly<Record<keyof typeof acLimitRows, Limit>>;

const rise: Source = {
  title: "UTE C 15-712-1",
  clause: "between inverter and supply at most 3 %, 1 % recommended",
  basis: "read",
};
const supply: Source = { title: "EN 50160", clause: "230 V ± 10 %", basis: "memory" };
const trip: Source = { title: "EN 50549-1", clause: "over-voltage, mean of ten minutes, 1.1 · Un", basis: "memory" };
const shock: Source = { title: "IEC 60364-4-41", clause: "411.4.4, Zs · Ia ≤ U0", basis: "memory" };
const touch: Source = { title: "IEC 60364-4-41", clause: "411.5.3, 50 V", basis: "read" };
const electrode: Source = {
  title: "BS 7671:2018",
  clause: "Table 41.5, note on unstable resistances",
  basis: "memory",
};
const reading: Source = { title: "IEC 60364-6", clause: "Annex D, reading at most 2/3 of U0 / Ia", basis: "memory" };
const residual: Source = { title: "IEC 61008-1", clause: "tripping times at IΔn", basis: "read" };
const leakage: Source = { title: "IEC 60364-5-53", clause: "531.3.2, protective conductor currents", basis: "memory" };
const notify: Source = {
  title: "EN 50549-1",
  clause: "units above 16 A per phase; below, EN 50549-10",
  basis: "memory",
};
const frame: Source = { title: "IEC 62548-1", clause: "bonding conductors of an array's frame", basis: "memory" };
const lightning: Source = {
  title: "IEC 62305-3",
  clause: "bonding conductors that carry lightning current, copper",
  basis: "memory",
};
const surge: Source = { title: "IEC 60364-5-53", clause: "534, Uc of devices at 1.1 · U0", basis: "memory" };
const withstand: Source = { title: "IEC 60664-1", clause: "overvoltage category II at 230/400 V", basis: "memory" };

/** The limits of the a.c. side in the international set; a national set takes these and replaces its own. */
export const acLimits: AcLimits = {
  acVoltageRise: limit(
    "acVoltageRise",
    1,
    rise,
    "Practice differs between 1 % and 2 %: the smaller leaves room for what the supply itself rises by.",
  ),
  highestSupplyVoltage: limit("highestSupplyVoltage", 253, supply),
  overVoltageTrip: limit("overVoltageTrip", 253, trip),
  minimumVoltageFactor: limit("minimumVoltageFactor", 1, shock),
  touchVoltage: limit("touchVoltage", 50, touch),
  electrodeResistance: limit("electrodeResistance", 200, electrode),
  loopReadingShare: limit("loopReadingShare", 66.6, reading),
  readingLoopTolerance: limit(
    "readingLoopTolerance",
    20,
    practice,
    "Lengths are estimates and instruments differ; a bad joint shows as more.",
  ),
  residualTripTime: limit("residualTripTime", 300, residual),
  residualTripTimeDelayed: limit("residualTripTimeDelayed", 500, residual),
  leakageShare: limit("leakageShare", 30, leakage),
  residualNonOperatingShare: limit("residualNonOperatingShare", 50, {
    ...residual,
    clause: "residual non-operating current",
  }),
  notifyCurrent: limit("notifyCurrent", 16, notify),
  lineDifference: limit(
    "lineDifference",
    16,
    practice,
    "One unit that may be connected without asking loads one line by as much.",
  ),
  frameBondingConductor: limit("frameBondingConductor", 6, frame),
  frameBondingConductorLightning: limit("frameBondingConductorLightning", 16, lightning),
  surgeContinuousFactor: limit("surgeContinuousFactor", 110, surge),
  surgeAcWithstand: limit("surgeAcWithstand", 2.5, withstand),
};
