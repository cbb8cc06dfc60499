import { flagOf, given, wordOf } from "../design/facts.js";
import type { Part } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";
import { type AcSurgeSubject, faultThrough, leastContinuous, weakestOf } from "./surge-ac-taps.js";
import { isType1 } from "./surge-type-needed.js";

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
export function acSurgeFixes(subject: AcSurgeSubject, judge: Judge): readonly Fix[] {
  const load = ifKnown(() => ({
    voltage: leastContinuous(subject, judge),
    current: faultThrough(subject, judge),
    level: weakestOf(subject, judge).highest,
  }));
  if (!load) return [];
  const asksForType1 = isType1(wordOf(subject.tap.spd, "type")) || judge.siteWord("lightning-protection") !== "none";
  const largest = given(subject.tap.spd, "max-backup-fuse");
  const fits = (part: Part): boolean => {
    const backup = given(part, "max-backup-fuse");
    return (
      wordOf(part, "supply") === "ac" &&
      (isType1(wordOf(part, "type")) || (!asksForType1 && wordOf(part, "type") === "type-2")) &&
      // One that asks for a smaller device ahead of it would need more than another part.
      (flagOf(part, "backup-fuse-needed") === false || (backup !== undefined && backup.value >= (largest?.value ?? 0)))
    );
  };
  return partFixes(judge, {
    thing: subject.tap.spd,
    properties: deciding,
    preview: (part) => {
      const volts = given(part, "max-continuous-voltage");
      const amperes = given(part, "short-circuit-rating");
      const level = given(part, "protection-level");
      if (!volts || !amperes || !level || !fits(part)) return undefined;
      if (volts.value < load.voltage.value || amperes.value < load.current.value || level.value > load.level.value)
        return undefined;
      return `${formatFigure(volts)}, ${percent(load.voltage.value / volts.value)}; lets through ${formatFigure(level)}`;
    },
    order: (part) => given(part, "max-continuous-voltage")?.value ?? 0,
  });
}
