import { goingOn, type Path } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { type Candidate, candidates, wouldBe } from "./added-device.js";
import { freeNumbers, takesDevices } from "./free-ways.js";
import type { Judge } from "./judge.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { acBackup } from "./surge-ac-backup.js";
import { backups } from "./surge-ac-backup-device.js";
import { acRating } from "./surge-ac-rating.js";
import type { AcSurgeSubject } from "./surge-ac-taps.js";
import { acType } from "./surge-ac-type.js";

/** A board at the origin of an installation, and the way from the supply to its bar. */
interface Origin {
  readonly plant: Plant;
  readonly board: Item;
  readonly path: Path;
}

/** Surge protective devices in scope on a free way of the first board behind a supply, with what backs them up. */
export function boardSurgeFixes(plant: Plant, supply: Item, judge: Judge): Fix[] {
  const origin = originOf(plant, supply);
  const [way] = origin && takesDevices(origin.board) ? (freeNumbers(origin.board, judge, 1) ?? []) : [];
  if (!origin || way === undefined) return [];
  const { board } = origin;
  const place = `on way ${way} of ${board.id}, for which nothing is written`;
  const some = candidates(judge, ["spd"], (spd) => fitness(tapOn(origin, spd), judge));
  return some.flatMap(({ part: spd, preview }): Fix[] => {
    const backup = backupOn(origin, wouldBe(spd), judge);
    if (!backup) return [];
    const fix = { does: "nest-devices", thing: board } as const;
    if (backup === "none-needed")
      return [{ ...fix, title: `Put an spd, ${spd.name}, ${place}`, preview, devices: [{ part: spd, way }] }];
    const { part } = backup;
    return [
      {
        ...fix,
        title: `Put an spd, ${spd.name}, behind a ${part.kind}, ${part.name}, ${place}`,
        preview: `${preview}; ${backup.preview}`,
        devices: [{ part, way, feeds: spd }],
      },
    ];
  });
}

/** The board whose bar the supply reaches first: what is fitted there protects everything behind it. */
function originOf(plant: Plant, supply: Item): Origin | undefined {
  let first: Origin | undefined;
  for (const { item: board, feeds } of plant.boards)
    for (const { source, path } of feeds)
      if (source === supply && (!first || path.hops.length < first.path.hops.length)) first = { plant, board, path };
  return first;
}

function tapOn({ plant, board, path }: Origin, spd: Item): AcSurgeSubject {
  const tap = { spd, path: goingOn(path, board, spd) };
  return { plant: { ...plant, surge: [...plant.surge, tap] }, tap };
}

/** What the rules about the device say of it there, but for what lies ahead of it. */
function fitness(subject: AcSurgeSubject, judge: Judge): Outcome[] {
  return eachOf(
    () => acRating(subject, judge),
    () => acType(subject, judge),
  ).filter(({ outcome }) => outcome !== "not-applicable");
}

/** What backs a device up on a way of its own, if its sheet asks for that or too much lies ahead; undefined: nothing does. */
function backupOn(origin: Origin, spd: Item, judge: Judge): Candidate | "none-needed" | undefined {
  const outcomes = eachOf(() => acBackup(tapOn(origin, spd), judge));
  const isEnough = outcomes.every(({ outcome }) => outcome === "pass" || outcome === "not-applicable");
  if (isEnough && flagOf(spd, "backup-fuse-needed") !== true) return "none-needed";
  const { plant, path } = origin;
  return backups({ plant, spd, path }, judge)[0] ?? (isEnough ? "none-needed" : undefined);
}
