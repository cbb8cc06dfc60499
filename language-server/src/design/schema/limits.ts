import { acLimitRows } from "./ac-limits.js";
import { type LimitRow, limitRow as row } from "./limit-row.js";
import { type PropertyRow, quantity, words } from "./row.js";
import { settingRows } from "./settings.js";

export type { LimitRow } from "./limit-row.js";

/**
 * The limits that a site may set for itself: `site { limits { dc-voltage-drop-design: 1.5 % } }`.
 * One row a limit; every rule set gives each a figure with its source.
 */
export const limitRows = {
  shortCircuitFactor: row(
    "short-circuit-factor",
    "K_I",
    "number",
    "",
    "Factor on Isc for the highest current of a string; higher over snow or bright ground.",
  ),
  dwellingDcVoltage: row("dwelling-dc-voltage", "Ulimit", "voltage", "V", "Highest d.c. voltage in or on a dwelling."),
  otherBuildingDcVoltage: row(
    "other-building-dc-voltage",
    "Ulimit",
    "voltage",
    "V",
    "Highest d.c. voltage in or on any other building.",
  ),
  groundMountedDcVoltage: row(
    "ground-mounted-dc-voltage",
    "Ulimit",
    "voltage",
    "V",
    "Highest d.c. voltage of an array that stands on the ground.",
  ),
  dcDropDesign: row(
    "dc-voltage-drop-design",
    "Δumax",
    "ratio",
    "%",
    "Voltage drop from string to inverter that the design aims at, as a share of the string's Ump.",
  ),
  dcDropCeiling: row(
    "dc-voltage-drop-ceiling",
    "Δumax",
    "ratio",
    "%",
    "Voltage drop from string to inverter that is not exceeded.",
  ),
  hotConductorTemperature: row(
    "hot-conductor-temperature",
    "Tc",
    "temperature",
    "degC",
    "Conductor temperature that voltage drops are computed at.",
  ),
  dcAcRatio: row(
    "dc-ac-ratio",
    "rmax",
    "number",
    "",
    "Array power over inverter power above which the design is asked to say why.",
  ),
  parallelPlaneDifference: row(
    "parallel-plane-difference",
    "Δ",
    "angle",
    "deg",
    "Angle between two module planes up to which strings in parallel count as one plane.",
  ),
  surgeProtectionFactor: row(
    "surge-protection-factor",
    "f",
    "ratio",
    "%",
    "Share of the impulse withstand voltage that a protection level may reach.",
  ),
  surgeSecondDistance: row(
    "surge-second-distance",
    "Lmax",
    "length",
    "m",
    "Cable length between array and inverter above which one surge protective device is not enough.",
  ),
  surgeLeadLength: row(
    "surge-lead-length",
    "dmax",
    "length",
    "m",
    "Total length of the leads of a surge protective device.",
  ),
  surgeEarthConductor: row(
    "surge-earth-conductor",
    "Smin",
    "area",
    "mm2",
    "Smallest earth conductor of a type 2 surge protective device.",
  ),
  surgeEarthConductorType1: row(
    "surge-earth-conductor-type-1",
    "Smin",
    "area",
    "mm2",
    "Smallest earth conductor of a type 1 surge protective device.",
  ),
  readingVoltageTolerance: row(
    "reading-voltage-tolerance",
    "δmax",
    "ratio",
    "%",
    "Difference between a measured and an expected voltage that is accepted.",
  ),
  readingCurrentTolerance: row(
    "reading-current-tolerance",
    "δmax",
    "ratio",
    "%",
    "Difference between a measured and an expected current that is accepted.",
  ),
  lowestReadingIrradiance: row(
    "lowest-reading-irradiance",
    "Gmin",
    "irradiance",
    "W/m2",
    "Irradiance below which a measured current says little.",
  ),
  ...acLimitRows,
} as const satisfies Record<string, LimitRow>;

export type LimitKey = keyof typeof limitRows;

/** The row of a property of the `limits` block. */
export function limitKey(name: string): LimitKey | undefined {
  return keyByName.get(name);
}

const keyByName = new Map(
  (Object.entries(limitRows) as [LimitKey, LimitRow][]).map(([key, { name }]) => [name, key] as const),
);

/** The properties of the `limits` block: figures first, then the choices. */
export const limitProperties: readonly PropertyRow[] = [
  ...Object.values(limitRows).map(({ name, symbol, dimension, help }) => quantity(name, dimension, help, { symbol })),
  ...Object.values(settingRows).map(({ name, words: choices, help }) => words(name, choices, help)),
];
