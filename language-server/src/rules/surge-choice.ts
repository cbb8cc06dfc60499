import type { PvArray } from "../circuit/array.js";
import { flagOf, given, wordOf } from "../design/facts.js";
import type { Part } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { type Candidate, wouldBe } from "./added-device.js";
import { arrayMaximumCurrent, highestOf } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";
import { protectedBy } from "./surge-load.js";
import type { SurgeSubject } from "./surge-taps.js";
import { suits } from "./surge-type-needed.js";

/** Everything that a surge protective device of an array must be fit for. */
interface Load {
  readonly voltage: Figure;
  readonly current: Figure;
  /** The lowest of the protection levels that what it protects asks for, V. */
  readonly highestLevel: number;
}

const deciding = [
  "supply",
  "type",
  "max-continuous-voltage",
  "short-circuit-rating",
  "protection-level",
  "backup-fuse-needed",
  "max-backup-fuse",
];

/** Other surge protective devices in scope that hold in every respect. */
export function surgeFixes(subject: SurgeSubject, judge: Judge): readonly Fix[] {
  const load = loadOf(subject, judge);
  if (!load) return [];
  return partFixes(judge, {
    thing: subject.tap.spd,
    properties: deciding,
    preview: (part) => preview(part, load, judge),
    order: (part) => given(part, "max-continuous-voltage")?.value ?? 0,
  });
}

/** Surge protective devices in scope that would hold where one is tapped off, near the inverter or at the array. */
export function addedSurge(array: PvArray, at: "inverter" | "array", judge: Judge): Candidate[] {
  const isNear = at === "inverter";
  const found: { candidate: Candidate; rank: number }[] = [];
  for (const part of judge.parts.values()) {
    if (part.kind !== "spd") continue;
    const tap = {
      spd: wouldBe(part),
      isolatedBy: [],
      fusedBy: [],
      toInverter: isNear ? 0 : Number.POSITIVE_INFINITY,
      toArray: isNear ? Number.POSITIVE_INFINITY : 0,
    };
    const load = loadOf({ tap, array }, judge);
    const after = load && preview(part, load, judge);
    if (after !== undefined)
      found.push({
        candidate: { part, preview: `${part.name}: ${after}` },
        rank: given(part, "max-continuous-voltage")?.value ?? 0,
      });
  }
  return found.sort((a, b) => a.rank - b.rank).map(({ candidate }) => candidate);
}

function loadOf(subject: SurgeSubject, judge: Judge): Load | undefined {
  try {
    return {
      voltage: highestOf(subject.array, judge).voltage,
      current: arrayMaximumCurrent(subject.array, judge),
      highestLevel: Math.min(...protectedBy(subject, judge).map(({ highest }) => highest.value)),
    };
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}

function preview(part: Part, { voltage, current, highestLevel }: Load, judge: Judge): string | undefined {
  const volts = given(part, "max-continuous-voltage");
  const amperes = given(part, "short-circuit-rating");
  const level = given(part, "protection-level");
  if (!volts || !amperes || !level) return undefined;
  if (wordOf(part, "supply") !== "dc" || !suits(wordOf(part, "type"), judge.siteWord("lightning-protection")))
    return undefined;
  // A device that asks for a fuse ahead of it would need more than another part.
  if (flagOf(part, "backup-fuse-needed") !== false) return undefined;
  if (volts.value < voltage.value || amperes.value < current.value || level.value > highestLevel) return undefined;
  return `${formatFigure(volts)}, ${percent(voltage.value / volts.value)}; lets through ${formatFigure(level)}`;
}
