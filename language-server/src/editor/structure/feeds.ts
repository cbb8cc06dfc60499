import type { Assessment } from "../../assessment/assessment.js";
import { type Hop, pathTo } from "../../circuit/feed.js";
import type { Item, Run } from "../../design/things.js";
import { isUnit, unitName, unitsThrough } from "../../rules/feeding-units.js";

/** One thing feeds the next, in the sense of one source. */
export interface Feed {
  readonly from: Item;
  readonly to: Item;
  /** The run between them; undefined within a board or an inverter. */
  readonly run?: Run;
  /** Whose energy it is: a string, a battery, the supply, an inverter. */
  readonly source: Item;
}

export interface Feeds {
  /** By the id of what is fed. */
  readonly into: ReadonlyMap<string, readonly Feed[]>;
  /** By the id of what feeds. */
  readonly outOf: ReadonlyMap<string, readonly Feed[]>;
}

const known = new WeakMap<Assessment, Feeds>();

/**
 * Who feeds whom, step by step. On the a.c. side energy may come from either end: there, what lies between supply and
 * inverter is fed by both.
 */
export function feedsOf(assessment: Assessment): Feeds {
  let feeds = known.get(assessment);
  if (!feeds) {
    const into = new Map<string, Feed[]>();
    const outOf = new Map<string, Feed[]>();
    const seen = new Set<string>();
    for (const feed of allFeeds(assessment)) {
      const key = `${feed.from.id}>${feed.to.id}>${feed.source.id}`;
      if (seen.has(key) || feed.from.id === feed.to.id) continue;
      seen.add(key);
      add(into, feed.to.id, feed);
      add(outOf, feed.from.id, feed);
    }
    feeds = { into, outOf };
    known.set(assessment, feeds);
  }
  return feeds;
}

function add(map: Map<string, Feed[]>, id: string, feed: Feed): void {
  const list = map.get(id);
  if (list) list.push(feed);
  else map.set(id, [feed]);
}

function* allFeeds(assessment: Assessment): Generator<Feed> {
  for (const { arrays } of assessment.zones) {
    for (const { strings, tracker, inverter } of arrays) {
      for (const { string, steps } of strings) {
        yield* alongSteps(string, [...steps, ...(tracker ? [tracker] : []), ...(inverter ? [inverter] : [])]);
      }
    }
  }
  for (const { trees, batteries } of assessment.plants) {
    for (const { battery, path, port } of batteries) {
      if (path) yield* alongHops(path.hops, battery);
      if (port?.parent) yield { from: port, to: port.parent, source: battery };
    }
    for (const tree of trees) {
      const source = unitName(tree.root);
      if (source !== tree.root.item) yield { from: source, to: tree.root.item, source };
      yield* alongHops([...tree.arriving.values()], source);
      if (tree.root.item.kind !== "supply") continue;
      for (const unit of unitsThrough(tree, tree.root)) {
        const path = pathTo(tree, unit);
        if (!path || !isUnit(unit)) continue;
        const generator = unitName(unit);
        if (generator !== unit.item) yield { from: generator, to: unit.item, source: generator };
        for (const { by, from, to } of path.hops) yield* alongHops([{ by, from: to, to: from }], generator);
      }
    }
  }
}

/** From a string over runs and devices to its inverter. */
function* alongSteps(string: Item, steps: readonly (Run | Item)[]): Generator<Feed> {
  let from = string;
  let run: Run | undefined;
  for (const step of steps) {
    if (step.is === "run") run = step;
    else {
      yield { from, to: step, run, source: string };
      from = step;
      run = undefined;
    }
  }
}

function* alongHops(hops: readonly Pick<Hop, "by" | "from" | "to">[], source: Item): Generator<Feed> {
  for (const { by, from, to } of hops)
    yield { from: from.item, to: to.item, run: by.is === "run" ? by : undefined, source };
}
