import { acIsolator } from "./ac-isolator.js";
import { acProtection } from "./ac-protection.js";
import { acVoltage } from "./ac-voltage.js";
import { arraySize } from "./array-size.js";
import { backupEarth } from "./backup-earth.js";
import { backupLoad } from "./backup-load.js";
import { batteryIsolator } from "./battery-isolator.js";
import { batteryLocation } from "./battery-location.js";
import { batteryMatch } from "./battery-match.js";
import { batteryProtection } from "./battery-protection.js";
import { boardRating } from "./board-rating.js";
import { breakingCapacity } from "./breaking-capacity.js";
import { buildingVoltage } from "./building-voltage.js";
import { connectorMix } from "./connector-mix.js";
import { dcCableCurrent } from "./dc-cable-current.js";
import { dcCableType } from "./dc-cable-type.js";
import { dcCableVoltage } from "./dc-cable-voltage.js";
import { dcIsolator } from "./dc-isolator.js";
import { dcVoltageDrop } from "./dc-voltage-drop.js";
import { designTemperature } from "./design-temperature.js";
import { devicePoles } from "./device-poles.js";
import { disconnection } from "./disconnection.js";
import { earthingSizes } from "./earthing-sizes.js";
import { frameBonding } from "./frame-bonding.js";
import { gridRoute } from "./grid-route.js";
import { isolationIncomplete } from "./isolation-incomplete.js";
import { labelMissing } from "./label-missing.js";
import { leakageBudget } from "./leakage-budget.js";
import { meterRating } from "./meter-rating.js";
import { neutralEarthLink } from "./neutral-earth-link.js";
import { oneWayDevice } from "./one-way-device.js";
import { parallelMismatch } from "./parallel-mismatch.js";
import { protectiveConductors } from "./protective-conductor.js";
import { rcdShared } from "./rcd-shared.js";
import { rcdType } from "./rcd-type.js";
import { readingCurrent } from "./reading-current.js";
import { readingInsulation } from "./reading-insulation.js";
import { readingLoop } from "./reading-loop.js";
import { readingMissing } from "./reading-missing.js";
import { readingPolarity } from "./reading-polarity.js";
import { readingVoltage } from "./reading-voltage.js";
import type { Rule } from "./rule.js";
import { sharedCircuit } from "./shared-circuit.js";
import { spareWay } from "./spare-way.js";
import { stringFuse } from "./string-fuse.js";
import { stringVoltage } from "./string-voltage.js";
import { surgeBackup } from "./surge-backup.js";
import { surgeLead } from "./surge-lead.js";
import { surgeNeeded } from "./surge-needed.js";
import { surgeRating } from "./surge-rating.js";
import { surgeSecond } from "./surge-second.js";
import { surgeStaysLive } from "./surge-stays-live.js";
import { surgeType } from "./surge-type.js";
import { terminalConductors } from "./terminal-conductors.js";
import { trackerCurrent } from "./tracker-current.js";
import { trackerInputs } from "./tracker-inputs.js";
import { trackerShortCircuit } from "./tracker-short-circuit.js";
import { trackerWindow } from "./tracker-window.js";

/** Every rule, in the order of the catalogue. Pages, tables, completion and the assessment all read this list. */
export const rules: readonly Rule[] = [
  stringVoltage,
  designTemperature,
  buildingVoltage,
  trackerWindow,
  trackerShortCircuit,
  trackerCurrent,
  trackerInputs,
  parallelMismatch,
  stringFuse,
  arraySize,
  dcCableCurrent,
  dcCableVoltage,
  dcCableType,
  dcVoltageDrop,
  dcIsolator,
  isolationIncomplete,
  surgeStaysLive,
  terminalConductors,
  connectorMix,
  surgeNeeded,
  surgeSecond,
  surgeRating,
  surgeType,
  surgeLead,
  surgeBackup,
  acProtection,
  acVoltage,
  breakingCapacity,
  disconnection,
  protectiveConductors,
  rcdType,
  rcdShared,
  oneWayDevice,
  devicePoles,
  boardRating,
  sharedCircuit,
  acIsolator,
  spareWay,
  meterRating,
  leakageBudget,
  batteryMatch,
  batteryProtection,
  batteryIsolator,
  batteryLocation,
  backupEarth,
  neutralEarthLink,
  backupLoad,
  earthingSizes,
  frameBonding,
  gridRoute,
  labelMissing,
  readingVoltage,
  readingCurrent,
  readingInsulation,
  readingPolarity,
  readingLoop,
  readingMissing,
];
