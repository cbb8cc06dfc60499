import { protectionOn } from "../circuit/feed.js";
import type { Item } from "../design/things.js";
import { formatApart, formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import type { Outcome } from "./rule.js";
import { backupFixes } from "./surge-ac-backup-device.js";
import { acSurgeFixes } from "./surge-ac-choice.js";
import type { AcSurgeSubject } from "./surge-ac-taps.js";

type Ahead = readonly [Item, "rated-current" | "service-fuse"];

/** Whether what lies ahead of a device is small enough to part it from the supply when it fails. */
export function acBackup(subject: AcSurgeSubject, judge: Judge): Outcome {
  const { spd, path } = subject.tap;
  const isNeeded = judge.flag(spd, "backup-fuse-needed");
  const largest = judge.quantity(spd, "max-backup-fuse");
  if (isNeeded === undefined && !largest) return judge.unknown(spd, "backup-fuse-needed");
  if (!largest)
    return isNeeded
      ? judge.unknown(spd, "max-backup-fuse")
      : judge.notApplicable("its sheet asks for no device ahead of it");
  // From the device towards the supply: the supplier's fuse is the last that may do.
  const ahead: Ahead[] = path
    ? protectionOn(path)
        .reverse()
        .map((device) => [device, "rated-current"])
    : [];
  if (path?.from.item.kind === "supply") ahead.push([path.from.item, "service-fuse"]);
  for (const [thing, property] of ahead) {
    const rating = judge.quantity(thing, property);
    if (rating && rating.value <= largest.value) return judge.pass(rating, largest, nameOf([thing, property]));
  }
  if (ahead.length === 0)
    return judge.finding({
      what: `${spd.id} asks for a device of at most ${formatFigure(largest)} ahead of it; there is none.`,
      why: "When it fails at the end of its life nothing parts it from what feeds it, and it burns.",
      todo: "Put a breaker or fuse in its lead.",
      spot: { thing: spd, word: "part" },
      related: [stated(spd, "max-backup-fuse", largest)],
      fixes: (asks) => [...backupFixes(subject.plant, subject.tap, asks), ...acSurgeFixes(subject, asks)],
    });
  const ratings = judge.need(...ahead);
  const rating = ratings.reduce((least, each) => (each.value < least.value ? each : least));
  const smallest = ahead[ratings.indexOf(rating)]!;
  const [has, allows] = formatApart(rating, largest);
  return judge.finding({
    what: `The smallest device ahead of ${spd.id} is rated ${has} (${nameOf(smallest)}); the sheet allows ${allows} at most.`,
    why: "It does not open in time when the device fails, and the device burns instead.",
    todo: `Put a breaker or fuse of at most ${allows} in its lead.`,
    spot: { thing: spd, word: "name" },
    value: rating,
    limit: largest,
    related: [stated(spd, "max-backup-fuse", largest), stated(smallest[0], smallest[1], rating)],
    fixes: (asks) => [...backupFixes(subject.plant, subject.tap, asks), ...acSurgeFixes(subject, asks)],
  });
}

function nameOf([thing, property]: Ahead): string {
  return property === "service-fuse" ? `service fuse of ${thing.id}` : thing.id;
}
