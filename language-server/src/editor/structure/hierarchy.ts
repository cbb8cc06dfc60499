import type { Assessment } from "../../assessment/assessment.js";
import type { Item, Run, Thing } from "../../design/things.js";
import { absolute } from "../../place.js";
import { nameAt, type Span } from "../navigate.js";
import { sortOfItem, type ThingSort } from "../thing-sort.js";
import { thingsOf } from "../things-of.js";
import type { WorkspaceView } from "../workspace-view.js";
import { type Feed, feedsOf } from "./feeds.js";

/** One thing of a design as an entry of "fed from" and "feeds". */
export interface HierarchyEntry {
  /** Of the file that the design begins in. */
  readonly entry: string;
  readonly id: string;
  readonly detail: string;
  readonly sort: ThingSort;
  readonly whole: Span;
  readonly at: Span;
}

export interface HierarchyStep {
  readonly to: HierarchyEntry;
  /** Where that is written: the run's ends, or the name. In the file of the entry that feeds. */
  readonly written: readonly Span[];
}

/** What stands at an offset, in every design that its file belongs to; both ends of a run. */
export function hierarchyAt(view: WorkspaceView, uri: string, offset: number): HierarchyEntry[] {
  const named = nameAt(view, uri, offset);
  if (!named) return [];
  const entries = new Map<string, HierarchyEntry>();
  for (const assessment of view.assessments(uri)) {
    for (const thing of thingsOf(assessment.design).of(named.declaration)) {
      for (const item of itemsOf(thing)) {
        const found = entryOf(view, assessment, item);
        if (found) entries.set(`${found.entry} ${found.id}`, found);
      }
    }
  }
  return [...entries.values()];
}

function itemsOf(thing: Thing): Item[] {
  if (thing.is === "item") return [thing];
  return thing.is === "run" ? [thing.from, thing.to].flatMap((end) => (end ? [end.item] : [])) : [];
}

/** What feeds a thing directly, and whose energy comes that way. */
export function fedFrom(view: WorkspaceView, entry: string, id: string): HierarchyStep[] {
  const assessment = view.assessment(entry);
  return steps(view, assessment, feedsOf(assessment).into.get(id) ?? [], ({ from }) => from);
}

/** What a thing feeds directly. */
export function feeds(view: WorkspaceView, entry: string, id: string): HierarchyStep[] {
  const assessment = view.assessment(entry);
  return steps(view, assessment, feedsOf(assessment).outOf.get(id) ?? [], ({ to }) => to);
}

/** One step for each neighbour, with all sources whose energy takes it. */
function steps(
  view: WorkspaceView,
  assessment: Assessment,
  found: readonly Feed[],
  neighbour: (feed: Feed) => Item,
): HierarchyStep[] {
  const byNeighbour = new Map<Item, Feed[]>();
  for (const feed of found) {
    const item = neighbour(feed);
    const list = byNeighbour.get(item);
    if (list) list.push(feed);
    else byNeighbour.set(item, [feed]);
  }
  const result: HierarchyStep[] = [];
  for (const [item, own] of byNeighbour) {
    const to = entryOf(view, assessment, item, own);
    const written = own[0] && to ? writtenAt(view, own[0]) : [];
    if (to) result.push({ to, written });
  }
  return result;
}

/** The run's end at what feeds, where both stand in one file; else the name of what feeds. */
function writtenAt(view: WorkspaceView, { from, run }: Feed): Span[] {
  const { namePlace } = from.declaration;
  const mention = run && endAt(run, from)?.mention.place;
  const place = mention && mention.chunk.uri === namePlace.chunk.uri ? mention : namePlace;
  return view.isLive(place) ? [absolute(place)] : [];
}

function endAt({ from, to }: Run, item: Item): Run["from"] {
  return [from, to].find((end) => end?.item.id === item.id);
}

function entryOf(
  view: WorkspaceView,
  { design }: Assessment,
  item: Item,
  by: readonly Feed[] = [],
): HierarchyEntry | undefined {
  const { place, namePlace } = item.declaration;
  if (!view.isLive(place)) return undefined;
  const what = item.part ? `${item.row?.title ?? item.kind}, ${item.part.name}` : (item.row?.title ?? item.kind);
  const runs = [...new Set(by.flatMap(({ run }) => (run ? [run.id] : [])))];
  const sources = [...new Set(by.map(({ source }) => source.id))];
  const through = runs.length > 0 ? ` through ${runs.join(", ")}` : "";
  const energy = sources.length > 0 ? ` (energy of ${sources.join(", ")})` : "";
  return {
    entry: design.entry,
    id: item.id,
    sort: sortOfItem(item),
    detail: `${what}${through}${energy}`,
    whole: absolute(place),
    at: absolute(namePlace),
  };
}
