import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Plant, TransformerView } from "../circuit/plant.js";
import { seenThrough } from "../circuit/plant-views.js";
import { flagOf } from "../design/facts.js";
import { type Item, isWrittenHere, type Run } from "../design/things.js";
import { formatApart, formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { strongerAcParts } from "./part-fixes-ac.js";
import { listed, stated } from "./phrases.js";
import type { Fix, Outcome } from "./rule.js";
import { eachOf } from "./several.js";
import { currentThrough } from "./through-current.js";

/** What a current transformer has to be for its reading to mean anything. */
export function transformerComparisons(
  view: TransformerView,
  plant: Plant,
  judge: Judge,
): (() => Outcome | readonly Outcome[] | undefined)[] {
  return [() => sees(view, plant, judge), () => arrow(view, judge), () => carries(view, plant, judge)];
}

const units = new Set(["ac", "generator"]);

function sees({ transformer, run, seen, unseen }: TransformerView, plant: Plant, judge: Judge): Outcome {
  if (!run) return judge.unknown(transformer, "around");
  if (plant.supplies.length === 0) return judge.notChecked(`no supply is wired to ${run.id}`);
  const purpose = judge.needWord(transformer, "measures");
  if (purpose === "load") return judge.notApplicable("it is there for one load");
  const isAlone = seen.length + unseen.length === 0;
  const wrong = purpose === "supply" ? unseen : seen.filter(({ kind }) => !units.has(kind));
  const isBlind = isAlone || (purpose === "generation" && !seen.some(({ kind }) => units.has(kind)));
  if (!isBlind && wrong.length === 0) return judge.holds(`it sees what it is there for (${purpose})`);
  const what = isBlind
    ? `${transformer.id} on ${run.id} sees no ${purpose === "supply" ? "current of the supply" : "generating unit"}.`
    : purpose === "supply"
      ? `${transformer.id} on ${run.id} does not see ${named(wrong)}: the supply feeds ${wrong.length > 1 ? "them" : "it"} past ${run.id}.`
      : `${transformer.id} on ${run.id} is there to see generation and sees ${named(wrong)} too.`;
  return judge.finding({
    severity: "warning",
    what,
    why:
      purpose === "supply"
        ? "What reads it steers by a current that is not the supply's: it exports or imports what it should not."
        : "What reads it takes a sum for generation that is none.",
    todo:
      purpose === "supply"
        ? "Clip it on the tails, ahead of every branch; or say with measures what else it is there to see."
        : "Clip it on the run of the generating units alone.",
    spot: { thing: transformer, property: "around" },
    related: [
      { spot: { thing: run, word: "name" }, message: "the run it is clipped on" },
      ...wrong.slice(0, 3).map((item) => ({
        spot: { thing: item, word: "name" as const },
        message: purpose === "supply" ? "not seen" : "seen too",
      })),
    ],
    fixes: (asked) => otherRuns({ transformer, run, seen, unseen }, plant, asked),
  });
}

/** Runs on which it would see what it is there for, and which it is large enough for. */
function otherRuns(view: TransformerView, plant: Plant, judge: Judge): Fix[] {
  const { transformer } = view;
  if (!isWrittenHere(transformer) || flagOf(transformer, "existing") === true) return [];
  const runs = [...new Set(plant.lines.map(({ run }) => run))];
  const fixes = runs.flatMap((run): Fix[] => {
    const there = { ...view, run, ...seenThrough(run, plant.trees) };
    const [sight, ...outcomes] = eachOf(
      () => sees(there, plant, judge),
      () => carries(there, plant, judge),
    );
    const [load] = outcomes;
    if (run === view.run || sight?.outcome !== "pass" || load?.outcome !== "pass" || outcomes.length > 1) return [];
    return [
      {
        title: `Clip ${transformer.id} on ${run.id}`,
        preview: `it sees ${named(there.seen)}; ${formatFigure(load.limit!)}, ${percent(load.utilisation ?? 0)}`,
        does: "set-property",
        thing: transformer,
        property: "around",
        value: run.id,
      },
    ];
  });
  // One run after the other on the same way all do alike.
  return fixes.slice(0, 3);
}

function named(items: readonly Item[]): string {
  const ids = [...new Set(items.map(({ id }) => id))];
  const most = 4;
  return ids.length <= most ? listed(ids) : `${ids.slice(0, most).join(", ")} and ${ids.length - most} more`;
}

function arrow({ transformer, readBy }: TransformerView, judge: Judge): Outcome {
  const points = judge.word(transformer, "arrow");
  const wanted = judge.word(transformer, "wanted-arrow");
  if (points === undefined || wanted === undefined)
    return judge.notChecked(
      "which way it points, or should, is not said",
      ...[points === undefined && "arrow", wanted === undefined && "wanted-arrow"].flatMap((property) =>
        property ? [{ thing: transformer, property }] : [],
      ),
    );
  if (points === wanted) return judge.holds("its arrow points as its reader wants it");
  const reader = readBy?.id ?? "its reader";
  return judge.finding({
    severity: "warning",
    what: `The arrow of ${transformer.id} points ${said(points)}; ${reader} wants it ${said(wanted)}.`,
    why: "Import then reads as export: the battery charges when it should give, or not at all.",
    todo: "Turn it round on its conductor.",
    spot: { thing: transformer, property: "arrow" },
    related: [
      { spot: { thing: transformer, property: "wanted-arrow" }, message: `${transformer.id}, wanted-arrow: ${wanted}` },
    ],
    fixes: () => [
      {
        title: `Turn ${transformer.id} ${said(wanted)}`,
        preview: `its arrow points as ${reader} wants it`,
        does: "set-property",
        thing: transformer,
        property: "arrow",
        value: wanted,
      },
    ],
  });
}

function said(word: string): string {
  return word.replace("-", " the ");
}

function carries({ transformer, run }: TransformerView, plant: Plant, judge: Judge): Outcome | readonly Outcome[] {
  const place = run && placeOf(run, plant);
  if (!place) return judge.notApplicable("nothing feeds what it is clipped on");
  const [rated] = judge.need([transformer, "rated-current"]);
  const { current, unknown } = currentThrough(place.tree, place.after, judge);
  if (!current) return unknown;
  if (current.value <= rated.value) return [judge.pass(current, rated, "rated current"), ...unknown];
  const [flows, reads] = formatApart(current, rated);
  return judge.finding({
    severity: "warning",
    what: `${transformer.id} is made for ${reads}; ${flows} may flow in ${run.id}.`,
    why: "Above its rated current it saturates and reads too little.",
    todo: "Use a larger one.",
    spot: { thing: transformer, property: "rated-current" },
    value: current,
    limit: rated,
    related: [stated(transformer, "rated-current", rated)],
    fixes: (asked) => strongerAcParts(asked, transformer, "rated-current", current),
  });
}

function placeOf(run: Run, { lines, trees }: Plant): { readonly tree: FeedTree; readonly after: Terminal } | undefined {
  const line = lines.find((candidate) => candidate.run === run);
  const tree = line && trees.find(({ root }) => root === line.root);
  return tree && { tree, after: line.far };
}
