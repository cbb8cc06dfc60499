import { toSi } from "@sunwright/grammar";
import type { Given, Source } from "../../physics/figure.js";
import type { AcRules, BatteryPlace, CircuitInsulationRow } from "../ac-rules.js";
import * as conductors from "../conductors.js";
import { ruleFigure } from "../rule-set.js";
import * as shock from "../shock.js";
import { drop } from "./drop.js";
import { bs7671, pas63100 } from "./sources.js";

/** Figures of the a.c. side for the British set. */

const neutrals: readonly (readonly [upTo: number, size: number])[] = [
  [35, 10],
  [50, 16],
  [95, 25],
  [150, 35],
  [Number.POSITIVE_INFINITY, 50],
];
const pme = bs7671("Table 54.8, main bonding where PME conditions hold", "read");
const otherwise = bs7671("regulation 544.1.1, main bonding where PME conditions do not hold", "read");

const bonding = {
  byNeutral: neutrals.map(([upTo, size]) => ({
    upTo: toSi(upTo, "mm2"),
    size: conductors.squareMillimetres("S", size, "main bonding by the supply's neutral", pme),
  })),
  least: conductors.squareMillimetres("Smin", 6, "least main bonding conductor", otherwise),
  most: conductors.squareMillimetres("Smax", 25, "main bonding conductor that is always enough", otherwise),
  source: otherwise,
};

const insulation = bs7671("Table 64, insulation resistance", "read");

export function circuitInsulationRow(upTo: number, volts: number, megohms: number, from: Source): CircuitInsulationRow {
  return {
    upTo,
    testVoltage: ruleFigure("Utest", volts, "voltage", "V", "insulation test voltage", from),
    leastResistance: ruleFigure(
      "Riso,min",
      toSi(megohms, "Mohm"),
      "resistance",
      "Mohm",
      "least insulation resistance",
      from,
    ),
  };
}

/** An assumption of the trade: nobody publishes one figure for all converters. */
export const batteryEfficiency: Given = {
  kind: "given",
  symbol: "η",
  value: 0.95,
  dimension: "ratio",
  unit: "%",
  origin: {
    kind: "assumed",
    text: "efficiency from battery to a.c. not stated: 95 %, which converters of this size reach at full power",
    source: { title: "practice of designers", basis: "practice" },
  },
};

const places: readonly (readonly [place: string, verdict: BatteryPlace["verdict"], why: string, clause: string])[] = [
  ["sleeping-room", "excluded", "people sleep there and wake too late", "section 6.5"],
  ["escape-route", "excluded", "a fire there cuts the way out", "section 6.5"],
  ["loft", "excluded", "a fire in a roof space is found late and reached badly", "section 6.5"],
  ["outdoors", "preferred", "a fire stays out of the building", "section 6.5.1"],
];

export const ac: AcRules = {
  drop,
  reactance: conductors.reactance,
  conductorTemperature: conductors.conductorTemperature,
  armourTemperature: conductors.armourTemperature,
  thermalInsulation: conductors.thermalInsulation(bs7671("Table 52.2, and regulation 523.9 from 0.5 m on")),
  disconnection: shock.disconnectionTimes(
    bs7671("Table 41.1", "read"),
    bs7671("regulations 411.3.2.3 and 411.3.2.4", "read"),
    bs7671("regulation 411.3.2.2", "read"),
  ),
  operatingMultiples: shock.operatingMultiples(bs7671("Table 41.3, Ia of circuit-breakers", "read")),
  fuseLoops: shock.fuseLoops,
  instantaneousTime: shock.instantaneousTime,
  energyLimits: shock.energyLimits,
  adiabaticFactors: conductors.adiabaticFactors,
  protectiveSizes: conductors.protectiveSizes(
    bs7671("Table 54.7", "read"),
    bs7671("regulation 543.1.1, protective conductors laid apart"),
    conductors.squareMillimetres(
      "Smin",
      4,
      "to an earth electrode, not protected against mechanical damage; more where it is buried",
      bs7671("regulations 542.3.1 and 543.1.1"),
    ),
    bonding,
  ),
  residualType: { source: bs7671("regulation 712.531.3.5.1 and group 531.3.3"), otherwise: "A" },
  circuitInsulation: [
    circuitInsulationRow(500, 500, 1, insulation),
    circuitInsulationRow(Number.POSITIVE_INFINITY, 1000, 1, insulation),
  ],
  batteryEfficiency,
  batteryPlaces: new Map(
    places.map(([place, verdict, why, clause]) => [place, { verdict, why, source: pas63100(clause) }]),
  ),
  batteryFireDetection: pas63100("6.5, detection that is linked to an alarm"),
};
