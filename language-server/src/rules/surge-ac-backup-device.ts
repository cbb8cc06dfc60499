import { goingOn, type Path, protectionOn } from "../circuit/feed.js";
import type { AcSurgeTap, Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { counted } from "../physics/make.js";
import { allCandidates, type Candidate, insertFixes, sourceEnd } from "./added-device.js";
import { judgeBreaking } from "./breaking-capacity.js";
import type { Judge } from "./judge.js";
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

/** The best of them in the lead of a device that is there. */
export function leadFixes(plant: Plant, { spd, run, path }: AcSurgeTap, judge: Judge): Fix[] {
  const hops = path?.hops.slice(0, -1);
  if (!run || !path || !hops) return [];
  const before: Path = { from: path.from, to: path.hops[hops.length]!.from, hops };
  const [best] = backups({ plant, spd, path: before }, judge);
  return best ? insertFixes([{ run, source: sourceEnd(run, before.to.item) }], [best]) : [];
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
