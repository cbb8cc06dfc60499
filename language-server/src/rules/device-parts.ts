import { given, wordOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { detects, type ResidualType } from "../physics/residual-current.js";
import type { Judge } from "./judge.js";
import { partFixes } from "./part-fixes.js";
import type { Fix } from "./rule.js";

/** Fixes that put another breaker, RCBO, fuse or RCD in the place of one. */

export interface DeviceQuestion {
  readonly device: Item;
  /** Properties that another part may change: in all others it must be no worse. */
  readonly changes: readonly string[];
  /** The figure after the fix, or undefined for a part that does not hold either. */
  readonly preview: (part: Part) => string | undefined;
  readonly order?: (part: Part) => number;
}

/** Parts in scope that would hold and are otherwise no worse than what is there. */
export function deviceFixes(judge: Judge, { device, changes, preview, order }: DeviceQuestion): Fix[] {
  return partFixes(judge, {
    thing: device,
    properties: changes,
    preview: (part) => (isNoWorse(part, device, changes) ? preview(part) : undefined),
    order: order ?? ((part) => given(part, "rated-current")?.value ?? 0),
  });
}

const kept = ["rated-current", "residual-current"];
const atLeast = ["poles", "breaking-capacity", "rated-voltage"];

/** Whether a part could stand for a device but for some of its properties. */
export function isNoWorse(part: Part, device: Item, changes: readonly string[]): boolean {
  const mustKeep = (name: string): boolean => !changes.includes(name);
  for (const name of kept) if (mustKeep(name) && !agrees(part, device, name)) return false;
  for (const name of atLeast) if (mustKeep(name) && !reaches(part, device, name)) return false;
  for (const name of ["curve", "category", "supply"])
    if (mustKeep(name) && wordOf(device, name) !== undefined && wordOf(part, name) !== wordOf(device, name))
      return false;
  if (mustKeep("type") && !detectsAsMuch(part, device)) return false;
  return (
    !mustKeep("power-flow") ||
    wordOf(device, "power-flow") !== "both-ways" ||
    wordOf(part, "power-flow") === "both-ways"
  );
}

function agrees(part: Part, device: Item, name: string): boolean {
  const now = given(device, name)?.value;
  return now === undefined || given(part, name)?.value === now;
}

function reaches(part: Part, device: Item, name: string): boolean {
  const now = given(device, name)?.value;
  return now === undefined || (given(part, name)?.value ?? 0) >= now;
}

function detectsAsMuch(part: Part, device: Item): boolean {
  const now = wordOf(device, "type");
  if (now === undefined || device.kind === "spd") return true;
  return detects(wordOf(part, "type") ?? "", now as ResidualType);
}
