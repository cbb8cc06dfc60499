import type { StringPath } from "../circuit/array.js";
import { withArticle } from "../design/article.js";
import { given } from "../design/facts.js";
import { makeItem } from "../design/items.js";
import type { Item, Part, Run } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { listed } from "./phrases.js";
import type { CutRun, Fix, Outcome } from "./rule.js";

/** Fixes that add a device: parts in scope are held against the place before anything is written. */

/** More than a few offers of one kind are no help. */
const offers = 3;

/** A part that would do in some place, and how much of what it stands would be used there. */
export interface Candidate {
  readonly part: Part;
  readonly preview: string;
}

/** A part as the item that it would be, for rules to look at before there is one. */
export function wouldBe(part: Part): Item {
  const { name, kind, declaration } = part;
  const { place, namePlace, kindPlace } = declaration;
  const mention = { path: [name], place: namePlace, places: [namePlace] };
  return makeItem(
    { declares: "item", name, kind, place, namePlace, kindPlace, properties: [], nested: [], part: mention },
    () => part,
  );
}

/** Parts of a kind of which everything that is asked is known and holds, the smallest first. */
export function candidates(
  judge: Judge,
  kinds: readonly string[],
  outcomesOf: (device: Item) => readonly Outcome[],
): Candidate[] {
  return allCandidates(judge, kinds, outcomesOf).slice(0, offers);
}

/** The same without an end, for whoever looks for more than the smallest. */
export function allCandidates(
  judge: Judge,
  kinds: readonly string[],
  outcomesOf: (device: Item) => readonly Outcome[],
): Candidate[] {
  const found: { candidate: Candidate; rank: number }[] = [];
  for (const part of judge.parts.values()) {
    if (!kinds.includes(part.kind)) continue;
    const outcomes = outcomesOf(wouldBe(part));
    if (outcomes.length === 0 || outcomes.some(({ outcome }) => outcome !== "pass")) continue;
    const rank = given(part, "rated-current")?.value ?? given(part, "max-continuous-voltage")?.value ?? 0;
    found.push({ candidate: { part, preview: previewOf(part, outcomes) }, rank });
  }
  return found.sort((a, b) => a.rank - b.rank).map(({ candidate }) => candidate);
}

/** The comparison that would be closest to its limit, as the previews of other fixes have it. */
function previewOf(part: Part, outcomes: readonly Outcome[]): string {
  let closest: { readonly share: number; readonly text: string } | undefined;
  for (const outcome of outcomes) {
    if (outcome.outcome !== "pass" || outcome.utilisation === undefined || !outcome.limit) continue;
    // Numbers of poles say whether, not how much.
    if (outcome.limit.dimension === "number" || (closest && closest.share >= outcome.utilisation)) continue;
    closest = {
      share: outcome.utilisation,
      text: `${formatFigure(outcome.limit)}, ${percent(outcome.utilisation)}`,
    };
  }
  return closest ? `${part.name}: ${closest.text}` : part.name;
}

/** Puts each of the candidates into some runs. */
export function insertFixes(cuts: readonly CutRun[], some: readonly Candidate[]): Fix[] {
  const [first] = cuts;
  if (!first) return [];
  const runs = listed(cuts.map(({ run }) => run.id));
  return some.map(({ part, preview }) => ({
    title: `Put ${withArticle(part.kind)}, ${part.name}, into ${cuts.length > 1 ? "each of " : ""}${runs}`,
    preview,
    does: "insert-device",
    thing: first.run,
    cuts,
    part,
  }));
}

/** The last run of a string's way that can be cut, of those for which something holds. */
export function lastCut({ steps, string }: StringPath, fits: (run: Run) => boolean): CutRun | undefined {
  const index = steps.findLastIndex((step) => step.is === "run" && fits(step));
  const run = steps[index];
  if (run?.is !== "run") return undefined;
  const before = steps.slice(0, index).findLast((step): step is Item => step.is === "item") ?? string;
  return { run, source: sourceEnd(run, before) };
}

/** The end of a run that is nearer to what comes before it on some way. */
export function sourceEnd(run: Run, before: Item | undefined): "from" | "to" {
  return before !== undefined && run.to?.item === before && run.from?.item !== before ? "to" : "from";
}
