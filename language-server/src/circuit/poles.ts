import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { isBeforeBar } from "./inside.js";

export type System = "dc" | "ac" | "ac-three-phase";

/** How many live conductors a device opens, and how many there are where it is wired. */
export interface Poles {
  /** Undefined where its poles are not stated. */
  readonly opened?: number;
  readonly needed: number;
}

/**
 * Live conductors are both poles of a d.c. circuit, and every line with its neutral on the a.c. side. A device on a
 * three-phase board that has one or two poles, or is said to be on one phase, belongs to a single-phase way; the
 * main switch goes by its board.
 */
export function polesOf(device: Item, system: System): Poles {
  const stated = given(device, "poles")?.value;
  const opened = stated === undefined ? undefined : stated + neutralApart(device, stated);
  return { opened, needed: neededPoles(device, system, stated) };
}

/** One where the neutral opens without being counted among the poles (1P+N, 3P+N). */
function neutralApart(device: Item, poles: number): number {
  return flagOf(device, "switched-neutral") === true && (poles === 1 || poles === 3) ? 1 : 0;
}

function neededPoles(device: Item, system: System, stated: number | undefined): number {
  if (system === "dc") return 2;
  const phases = phasesOf(device);
  if (phases === 1 || wordOf(device, "phase") !== undefined) return 2;
  if (phases === 3) return 4;
  return system === "ac-three-phase" && (stated === undefined || stated > 2) ? 4 : 2;
}

/** As it says itself; what comes before the bar of a board is in every line that the board has. */
function phasesOf(device: Item): number | undefined {
  return (given(device, "phases") ?? (isMainSwitch(device) ? given(device.parent!, "phases") : undefined))?.value;
}

function isMainSwitch(device: Item): boolean {
  return device.parent?.kind === "board" && isBeforeBar(device);
}

/** A main switch of two poles among three lines: whether its board has one of them or all, somebody has to say. */
export function lacksPhases(device: Item, system: System): boolean {
  const { opened = 4 } = polesOf(device, system);
  const isSilent = phasesOf(device) === undefined && wordOf(device, "phase") === undefined;
  return system === "ac-three-phase" && opened < 4 && isMainSwitch(device) && isSilent;
}

/** A device that does not free a person from every live conductor, and why. */
export interface Ineffective {
  readonly device: Item;
  readonly why: string;
  /** The property that would settle it, where one is missing. */
  readonly missing?: string;
}

/** Whether opening a device may be relied upon; undefined where it may. */
export function ineffective(device: Item, system: System): Ineffective | undefined {
  if (flagOf(device, "suitable-for-isolation") === false)
    return { device, why: "its maker does not mark it as suitable for isolation" };
  if (device.kind === "changeover") {
    const off = flagOf(device, "off-position");
    if (off === false) return { device, why: "it has no position in which nothing is joined" };
    if (off === undefined) return { device, why: "it is not said to have an off position", missing: "off-position" };
  }
  // What is built in, and a fuse that is drawn out, are only declared where they open every live conductor.
  if (device.kind === "battery" || device.kind === "inverter" || device.kind === "fuse") return undefined;
  if (flagOf(device, "opens-all-poles-together") === false) return { device, why: "its poles do not open together" };
  const { opened, needed } = polesOf(device, system);
  if (opened === undefined) return { device, why: "its number of poles is not stated", missing: "poles" };
  if (opened < needed) return { device, why: `it opens ${opened} of ${needed} live conductors` };
  if (lacksPhases(device, system)) return { device, why: "its number of phases is not stated", missing: "phases" };
  return undefined;
}
