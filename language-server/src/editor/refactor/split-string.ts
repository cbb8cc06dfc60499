import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Design } from "../../design/design.js";
import type { ItemDeclaration } from "../../design/model.js";
import type { Item, Run } from "../../design/things.js";
import { absolute } from "../../place.js";
import { freeTrackers } from "../../rules/strings-of.js";
import { counted } from "../counted.js";
import type { Change } from "../edits/change.js";
import { lineEnding } from "../edits/layout.js";
import { thingsOf } from "../things-of.js";
import type { WorkspaceView } from "../workspace-view.js";
import { FreshNames } from "./fresh-names.js";
import type { Asked, Refactoring } from "./refactoring.js";
import { copyOf, replaced } from "./rewritten.js";
import { linesBehind } from "./stretch.js";

/** A string becomes two of half its modules each, beside each other or on a tracker of their own. */
export function splitString(asked: Asked): Refactoring[] {
  const { declaration, view, designs } = asked;
  if (declaration.declares !== "item" || declaration.kind !== "string") return [];
  const { count, part } = declaration;
  if (!count || !part || !Number.isInteger(count.value) || count.value < 2) return [];
  const [design] = designs;
  const item = design && thingsOf(design).of(declaration)[0];
  if (!design || item?.is !== "item") return [];
  const runs = runsAt(design, item);
  const [run] = runs;
  if (!run || runs.length > 1 || view.fragmentOf(run.declaration.place)?.broken !== false) return [];
  const beside = split(asked, declaration, item, run, undefined);
  const tracker = freeTracker(view, asked.uri, item);
  return tracker ? [beside, split(asked, declaration, item, run, tracker)] : [beside];
}

function split(
  { text, view, designs }: Asked,
  declaration: ItemDeclaration,
  item: Item,
  run: Run,
  tracker: Item | undefined,
): Refactoring {
  const count = declaration.count!;
  const stays = Math.ceil(count.value / 2);
  const goes = count.value - stays;
  const names = new FreshNames(designs);
  const [string, cable] = [names.next("string"), names.next("run")];
  const { start: from, end: to } = absolute({ ...declaration.place, from: declaration.kindPlace.from });
  const copy = copyOf(text, from, to, [replaced(declaration.namePlace, string), replaced(count.place, String(goes))]);
  const isFrom = run.from?.item === item;
  const far = isFrom ? run.to : run.from;
  const end = tracker?.id ?? far?.mention.path.join(".") ?? l10n.t("its run's end");
  const without = doubtful(designs, item);
  return {
    title: `${l10n.t("Split {0} into {1} and {2} modules: new {3} through new {4} to {5}", item.id, stays, goes, string, cable, end)}${without}`,
    kind: "refactor.rewrite",
    changes: [
      replaced(count.place, String(stays)),
      linesBehind(text, declaration.place, copy),
      secondRun(view, run, cable, string, isFrom, tracker),
    ],
  };
}

/** The run of the old string once more for the new one. How long that one is nobody has said. */
function secondRun(
  view: WorkspaceView,
  { declaration, id }: Run,
  name: string,
  string: string,
  isFrom: boolean,
  tracker: Item | undefined,
): Change {
  const text = view.sources.text(declaration.place.chunk.uri) ?? "";
  const { start, end } = absolute(declaration.place);
  const [near, far] = isFrom ? [declaration.from, declaration.to] : [declaration.to, declaration.from];
  const changes = [replaced(declaration.namePlace, name)];
  if (near?.places[0]) changes.push(replaced(near.places[0], string));
  if (far && tracker) changes.push(replaced(far.place, tracker.id));
  const note = declaration.length ? `// as long as ${id}: measure${lineEnding(text)}` : "";
  return linesBehind(text, declaration.place, `${note}${copyOf(text, start, end, changes)}`);
}

function runsAt({ runs }: Design, item: Item): Run[] {
  return runs.filter(({ from, to }) => from?.item === item || to?.item === item);
}

function freeTracker(view: WorkspaceView, uri: string, { id }: Item): Item | undefined {
  const zoneOf = ({ zones }: Assessment) =>
    zones.find(({ arrays }) => arrays.some(({ strings }) => strings.some(({ string }) => string.id === id)));
  for (const assessment of view.assessments(uri)) {
    const zone = zoneOf(assessment);
    if (zone) return freeTrackers(zone)[0];
  }
  return undefined;
}

/** What was read, departed from or expected of the string as it was stays; whether it still applies is for the writer. */
function doubtful(designs: readonly Design[], item: Item): string {
  const isIt = ({ target }: { readonly target?: { readonly path: readonly string[] } }): boolean =>
    target?.path.join(".") === item.id;
  const readings = new Set(designs.flatMap((each) => each.readings).filter(({ declaration }) => isIt(declaration)));
  const departures = new Set(designs.flatMap((each) => each.departures).filter(isIt));
  const expectations = new Set(designs.flatMap((each) => each.expectations).filter(isIt));
  const found = [
    counted(readings.size, l10n.t("1 reading"), (count) => l10n.t("{0} readings", count)),
    counted(departures.size, l10n.t("1 departure"), (count) => l10n.t("{0} departures", count)),
    counted(expectations.size, l10n.t("1 expectation"), (count) => l10n.t("{0} expectations", count)),
  ].filter(Boolean);
  if (found.length === 0) return "";
  return ` ${l10n.t("(written for {0} modules, look again: {1})", item.count ?? "", found.join(", "))}`;
}
