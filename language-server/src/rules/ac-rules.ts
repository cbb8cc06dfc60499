import type { DropColumn } from "../physics/ac-drop.js";
import type { FactorTable } from "../physics/ampacity.js";
import type { DisconnectionTimes, FuseLoops, OperatingMultiple } from "../physics/disconnection.js";
import type { AdiabaticFactors, EnergyLimit } from "../physics/fault-energy.js";
import type { Given, Source } from "../physics/figure.js";
import type { ProtectiveSizes } from "../physics/protective-size.js";
import type { ResidualTypeRule } from "../physics/residual-current.js";

/** What a rule set thinks of a place for a battery. */
export interface BatteryPlace {
  readonly verdict: "excluded" | "discouraged" | "preferred";
  /** In one clause. */
  readonly why: string;
  readonly source: Source;
}

/** How a rule set works out whether the a.c. side asks for surge protection. */
export interface SurgeRisk {
  /** Factor by the word of `site { surroundings: … }`. */
  readonly environment: ReadonlyMap<string, Given>;
  /** Length of the supply line that counts, m. */
  readonly line: Given;
  /** From this level on no device is asked for. */
  readonly least: Given;
}

/** Figures of the a.c. side, the battery and earthing that a site cannot change. */
export interface AcRules {
  /** Printed voltage drops; a cable without a column is computed from its resistance. */
  readonly drop: readonly DropColumn[];
  /** Reactance of one conductor where it is computed, Ω/m. */
  readonly reactance: Given;
  /** Conductor temperature at full load by the word of a cable's `insulation`, K. */
  readonly conductorTemperature: ReadonlyMap<string, Given>;
  /** Temperature of steel armour at full load by insulation, K. */
  readonly armourTemperature: ReadonlyMap<string, Given>;
  /** Ci by the length that thermal insulation surrounds, m. */
  readonly thermalInsulation: FactorTable;
  readonly disconnection: DisconnectionTimes;
  readonly operatingMultiples: readonly OperatingMultiple[];
  readonly fuseLoops: readonly FuseLoops[];
  /** Time that a circuit-breaker needs in its instantaneous range, at most, s. */
  readonly instantaneousTime: Given;
  readonly energyLimits: readonly EnergyLimit[];
  readonly adiabaticFactors: AdiabaticFactors;
  readonly protectiveSizes: ProtectiveSizes;
  readonly residualType: ResidualTypeRule;
  /** Insulation test of fixed wiring, by nominal voltage. */
  readonly circuitInsulation: readonly CircuitInsulationRow[];
  /** From battery to a.c. where the port states none: an assumption with its reason. */
  readonly batteryEfficiency: Given;
  /** By the word of `place`; a place that is not named has nothing against it. */
  readonly batteryPlaces: ReadonlyMap<string, BatteryPlace>;
  /** Who asks for a fire alarm where a battery stands indoors; undefined where nobody does. */
  readonly batteryFireDetection?: Source;
  /** Undefined where a device is asked for unless the owner declines, whatever the risk. */
  readonly surgeRisk?: SurgeRisk;
}

export interface CircuitInsulationRow {
  /** Nominal voltages up to this one, V. */
  readonly upTo: number;
  readonly testVoltage: Given;
  readonly leastResistance: Given;
}

/** The row for a nominal voltage in V. */
export function circuitInsulationRow(rules: AcRules, voltage: number): CircuitInsulationRow | undefined {
  return rules.circuitInsulation.find(({ upTo }) => voltage <= upTo);
}
