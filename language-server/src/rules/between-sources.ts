import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { unitsThrough } from "./feeding-units.js";
import { type PassedDevice, passedDevices } from "./passed-devices.js";

/** A device with the supply, or another source, on its one side and units that feed in on its other. */
export interface DeviceBetween extends PassedDevice {
  readonly plant: Plant;
  /** Beyond the device, seen from the root. */
  readonly units: readonly Terminal[];
}

/** Devices between units that feed in and what they feed into, each once. */
export function* devicesBetween(plant: Plant, wanted: (item: Item) => boolean): Generator<DeviceBetween> {
  for (const passed of passedDevices(plant, wanted)) {
    const units = unitsThrough(passed.tree, passed.after);
    if (units.length > 0) yield { ...passed, plant, units };
  }
}

export function isResidual({ kind }: Item): boolean {
  return kind === "rcd" || kind === "rcbo";
}
