import type { Source } from "../../physics/figure.js";
import type { AcRules, BatteryPlace } from "../ac-rules.js";
import * as conductors from "../conductors.js";
import { batteryEfficiency, circuitInsulationRow } from "../gb/ac.js";
import * as shock from "../shock.js";
import { surgeRisk } from "./surge-risk.js";

/**
 * Figures of the a.c. side for the international set. Its tables of disconnection times, protective conductors and
 * factors k are those that the British book reprints; the annex clauses themselves are known from memory only.
 */

function iec(part: string, clause: string): Source {
  return { title: `IEC 60364-${part}`, clause, basis: "memory" };
}

const bonding = iec("5-54", "544.1, main bonding conductors");
const insulation = iec("6", "Table 6.1, insulation resistance");
const cautious: Source = { title: "caution about fires of batteries in dwellings", basis: "practice" };

const places: readonly (readonly [place: string, verdict: BatteryPlace["verdict"], why: string])[] = [
  ["sleeping-room", "discouraged", "people sleep there and wake too late"],
  ["escape-route", "discouraged", "a fire there cuts the way out"],
  ["loft", "discouraged", "a fire in a roof space is found late and reached badly"],
  ["outdoors", "preferred", "a fire stays out of the building"],
];

export const ac: AcRules = {
  drop: [],
  reactance: conductors.reactance,
  conductorTemperature: conductors.conductorTemperature,
  armourTemperature: conductors.armourTemperature,
  thermalInsulation: conductors.thermalInsulation({
    title: "BS 7671:2018",
    clause: "Table 52.2, for want of an international one",
    basis: "memory",
  }),
  disconnection: shock.disconnectionTimes(
    iec("4-41", "Table 41.1"),
    iec("4-41", "411.3.2.3 and 411.3.2.4"),
    iec("4-41", "411.3.2.2"),
  ),
  operatingMultiples: shock.operatingMultiples({ title: "IEC 60898-1", clause: "instantaneous ranges", basis: "read" }),
  fuseLoops: shock.fuseLoops,
  instantaneousTime: shock.instantaneousTime,
  energyLimits: shock.energyLimits,
  adiabaticFactors: conductors.adiabaticFactors,
  protectiveSizes: conductors.protectiveSizes(
    iec("5-54", "Table 54.2"),
    iec("5-54", "543.1.3, protective conductors laid apart"),
    conductors.squareMillimetres("Smin", 6, "to an earth electrode, copper", iec("5-54", "542.3.1")),
    {
      least: conductors.squareMillimetres("Smin", 6, "least main bonding conductor", bonding),
      most: conductors.squareMillimetres("Smax", 25, "main bonding conductor that is always enough", bonding),
      source: bonding,
    },
  ),
  residualType: { source: iec("7-712", "712.531.3, type of RCD"), otherwise: "A" },
  circuitInsulation: [
    circuitInsulationRow(500, 500, 1, insulation),
    circuitInsulationRow(Number.POSITIVE_INFINITY, 1000, 1, insulation),
  ],
  batteryEfficiency,
  batteryPlaces: new Map(places.map(([place, verdict, why]) => [place, { verdict, why, source: cautious }])),
  surgeRisk,
};
