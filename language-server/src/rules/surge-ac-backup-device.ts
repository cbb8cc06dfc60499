import { goingOn, type Path, protectionOn } from "../circuit/feed.js";
import type { AcSurgeTap, BoardCircuit, Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { counted } from "../physics/make.js";
import { formatFigure } from "../physics/working.js";
import { allCandidates, type Candidate, insertFixes, sourceEnd } from "./added-device.js";
import { judgeBreaking } from "./breaking-capacity.js";
import { deviceFixes } from "./device-parts.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";

/** Where a device is to part a surge protective device from the supply, and the way up to there. */
export interface BackupPlace {
  readonly plant: Plant;
  readonly spd: Item;
  readonly path: Path;
}

/**
 * Breakers and fuses in scope that would part a surge protective device from the supply when it fails, the largest
 * first: a smaller one opens at surges that the device itself stands.
 */
export function backups(place: BackupPlace, judge: Judge): Candidate[] {
  return allCandidates(judge, ["breaker", "fuse"], (device) => comparisons(device, place, judge)).reverse();
}

/** For a device that is there: a smaller one on its way where that feeds nothing else, or the best of them in its lead. */
export function backupFixes(plant: Plant, tap: AcSurgeTap, judge: Judge): Fix[] {
  const { spd, run, path } = tap;
  const smaller = smallerOnWay(plant, tap, judge);
  if (smaller.length > 0 || !run || !path) return smaller;
  const before = upTo(path, path.hops.length - 1);
  const [best] = backups({ plant, spd, path: before }, judge);
  return best ? insertFixes([{ run, source: sourceEnd(run, before.to.item) }], [best]) : [];
}

function smallerOnWay(plant: Plant, { spd, path, protectedBy }: AcSurgeTap, judge: Judge): Fix[] {
  const circuits = plant.boards.flatMap((board) => board.circuits);
  const circuit = circuits.find(({ device }) => device === protectedBy);
  const index = path?.hops.findIndex(({ by }) => by === protectedBy) ?? -1;
  const largest = judge.quantity(spd, "max-backup-fuse");
  if (!path || !protectedBy || index < 0 || !largest || !circuit || !feedsOnly(spd, circuit)) return [];
  const fitting = backups({ plant, spd, path: upTo(path, index) }, judge).map(({ part }) => part);
  return deviceFixes(judge, {
    device: protectedBy,
    changes: ["rated-current"],
    preview: (part) => {
      const rating = fitting.includes(part) ? given(part, "rated-current") : undefined;
      return rating && `${formatFigure(rating)}, ${percent(rating.value / largest.value)}`;
    },
    order: (part) => -(given(part, "rated-current")?.value ?? 0),
  });
}

function feedsOnly(spd: Item, { beyond, serves, servesText }: BoardCircuit): boolean {
  const { surge, loads, boards, gridPorts, generators } = beyond;
  const others = loads.length + boards.length + gridPorts.length + generators.length;
  return others === 0 && surge.every((each) => each === spd) && (serves ?? spd) === spd && servesText === undefined;
}

function upTo({ from, hops }: Path, index: number): Path {
  return { from, to: hops[index]!.from, hops: hops.slice(0, index) };
}

function comparisons(device: Item, place: BackupPlace, judge: Judge): Outcome[] {
  return eachOf(
    () => smallEnough(device, place, judge),
    () => inEveryLine(device, place, judge),
    () => breaksTheFault(device, place, judge),
  );
}

/** Small enough for the sheet; one that is no smaller than what lies ahead would not be the one that opens. */
function smallEnough(device: Item, { spd, path }: BackupPlace, judge: Judge): Outcome {
  const [rating, largest] = judge.need([device, "rated-current"], [spd, "max-backup-fuse"]);
  const ahead = [
    ...protectionOn(path).map((each) => given(each, "rated-current")),
    given(path.from.item, "service-fuse"),
  ];
  if (ahead.some((each) => each && each.value <= rating.value))
    return judge.notApplicable("what lies ahead is smaller");
  if (rating.value > largest.value) return judge.notApplicable("the sheet allows less");
  return judge.pass(rating, largest, spd.id);
}

function inEveryLine(device: Item, { path }: BackupPlace, judge: Judge): Outcome {
  const supply = judge.word(device, "supply");
  // A breaker is for a.c. unless its sheet says otherwise; a fuse may be for either.
  if (supply === "dc" || (supply === undefined && device.kind === "fuse")) return judge.notApplicable("made for d.c.");
  const [phases] = judge.need([path.from.item, "phases"]);
  if (device.kind === "fuse") {
    if (phases.value > 1) return judge.notApplicable("one fuse is not enough for three lines");
    return judge.holds("in the line");
  }
  const [poles] = judge.need([device, "poles"]);
  if (poles.value < phases.value) return judge.notApplicable("not in every line");
  return judge.passAtLeast(poles, counted("N", phases.value, "lines"), "poles");
}

function breaksTheFault(device: Item, { plant, path }: BackupPlace, judge: Judge): Outcome {
  const tree = plant.trees.find(({ root }) => root === path.from);
  if (!tree) return judge.notChecked("no supply feeds it");
  const after = goingOn(path, device, device).to;
  const way = { supply: path.from.item, hops: path.hops };
  return judgeBreaking({ plant, passed: { device, tree, before: path.to, after }, way }, judge);
}
