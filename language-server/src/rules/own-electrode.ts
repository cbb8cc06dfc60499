import type { BoardCircuit, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import type { Derived, Figure } from "../physics/figure.js";
import { largestElectrodeResistance } from "../physics/island.js";
import type { Judge } from "./judge.js";

/** The installation's own earth electrode, and what it may have. */

/** Electrodes that the installation relies on in a mode. */
export function electrodesIn({ electrodes }: Plant, mode: "grid" | "island", judge: Judge): Item[] {
  return electrodes.filter((electrode) => {
    const used = judge.word(electrode, "used-in");
    return used === mode || used === "both";
  });
}

/** Sort of electrode that the earthing block tells of as found; undefined for none, and where nothing is said. */
export function electrodeAsFound({ earthing }: Plant, judge: Judge): string | undefined {
  const sort = earthing && judge.word(earthing, "electrode");
  return sort === "none" ? undefined : sort;
}

/** RCDs and RCBOs that some circuits lie behind, each once. */
export function residualDevices(circuits: readonly BoardCircuit[]): Item[] {
  const found = new Set<Item>();
  for (const { rcds, device } of circuits) {
    for (const rcd of rcds) found.add(rcd);
    if (device.kind === "rcbo" || device.kind === "rcd") found.add(device);
  }
  return [...found];
}

/**
 * Largest resistance of an electrode (Ω): what stays the same through the seasons, and what keeps the touch voltage
 * down with the least sensitive of some RCDs.
 */
export function electrodeLimit(devices: readonly Item[], judge: Judge): Figure {
  const stable = judge.limit("electrode-resistance");
  const currents = judge.need(...devices.map((device) => [device, "residual-current"] as const));
  let largest: Derived | undefined;
  for (const current of currents) {
    const limit = largestElectrodeResistance(judge.limit("touch-voltage"), current, stable);
    if (!largest || limit.value < largest.value) largest = limit;
  }
  return largest ?? stable;
}
