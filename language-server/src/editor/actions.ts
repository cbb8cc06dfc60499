import * as l10n from "@vscode/l10n";
import type { Assessment, Check } from "../assessment/assessment.js";
import { label } from "../design/facts.js";
import type { Problem } from "../design/model.js";
import { propertyRow } from "../design/schema/index.js";
import type { Thing } from "../design/things.js";
import { absolute } from "../place.js";
import type { Edit } from "./edits/change.js";
import { departureEdit } from "./edits/departure-edit.js";
import { fixEdit, propertyEdit } from "./edits/fix-edit.js";
import { placeholder } from "./edits/placeholder.js";
import { notCheckedId } from "./pages.js";
import { isNotChecked } from "./unknowns.js";
import type { PlacedNotice, WorkspaceView } from "./workspace-view.js";

/** Something the editor offers to do at a mark. */
export interface Action extends Edit {
  readonly title: string;
  /** The mark that it answers: its id, and where it begins. */
  readonly answers: { readonly id: string; readonly start: number };
  /** The one right thing to do, as far as a machine can tell. */
  readonly preferred: boolean;
}

/** Everything that can be done about what is marked in a stretch of a file. */
export function actionsAt(view: WorkspaceView, uri: string, start: number, end: number): Action[] {
  const actions: Action[] = [];
  for (const placed of view.notices(uri)) {
    const span = absolute(placed.notice.place);
    if (span.start > end || span.end < start) continue;
    if (placed.notice.problem) actions.push(...problemActions(placed.notice.problem));
    if (placed.notice.check) actions.push(...checkActions(view, placed, placed.notice.check));
  }
  actions.push(...missingActions(view, uri, start, end));
  return withoutRepeats(actions);
}

/** "Did you mean": the suggested texts in place of the wrong one. */
function problemActions({ id, place, suggestions = [] }: Problem): Action[] {
  const span = absolute(place);
  return suggestions.map(({ title, text }) => ({
    title,
    changes: [{ ...span, text }],
    answers: { id, start: span.start },
    // Where there are several meanings, choosing is for the writer.
    preferred: suggestions.length === 1,
  }));
}

function checkActions(view: WorkspaceView, { notice, assessment }: PlacedNotice, check: Check): Action[] {
  const { outcome } = check;
  if (outcome.outcome !== "finding") return [];
  const answers = { id: notice.id, start: absolute(notice.place).start };
  const actions: Action[] = [];
  for (const fix of outcome.fixes?.(assessment.judge) ?? []) {
    const changes = fixEdit(view, fix);
    if (!changes || changes.length === 0) continue;
    const title = fix.preview === undefined ? fix.title : `${fix.title} (${fix.preview})`;
    actions.push({ title, changes, answers, preferred: false });
  }
  const departure = departureEdit(view, check.rule.id, check.thing, assessment.design.entry);
  if (departure) {
    const title = l10n.t("Record a departure from {0} on {1}", check.rule.id, label(check.thing));
    actions.push({ title, changes: [departure], answers, preferred: false });
  }
  return actions;
}

/** For things that could not be checked: a line for each missing property, to be filled in. */
function missingActions(view: WorkspaceView, uri: string, start: number, end: number): Action[] {
  const actions: Action[] = [];
  for (const assessment of view.assessments(uri)) {
    for (const check of assessment.told) {
      if (!isNotChecked(check)) continue;
      const place = check.thing.declaration.namePlace;
      if (place.chunk.uri !== uri) continue;
      const span = absolute(place);
      if (span.start > end || span.end < start || !view.isLive(place)) continue;
      for (const { thing, property } of check.outcome.missing)
        actions.push(...insertActions(view, assessment, thing, property, span.start));
    }
  }
  return actions;
}

function insertActions(
  view: WorkspaceView,
  { design }: Assessment,
  thing: Thing,
  property: string,
  start: number,
): Action[] {
  const owners: Thing[] = [thing];
  // What a sheet prints is better stated there: every item of the part then knows it.
  if (thing.is === "item" && thing.part) owners.unshift(thing.part);
  if (thing.is === "run" && thing.cable) owners.unshift(thing.cable);
  return owners.flatMap((owner): Action[] => {
    if (!owner.row || !propertyRow(owner.row, property)) return [];
    const { declaration } = owner;
    if (declaration.properties.some(({ name }) => name === property)) return [];
    if (view.fragmentOf(declaration.place)?.broken !== false) return [];
    const change = propertyEdit(view, declaration, property, placeholder);
    if (!change) return [];
    const where = declaration.place.chunk.uri === design.entry ? undefined : fileName(declaration.place.chunk.uri);
    return [
      {
        title:
          where === undefined
            ? l10n.t("Insert {0} of {1}, to be filled in", property, label(owner))
            : l10n.t("Insert {0} of {1} in {2}, to be filled in", property, label(owner), where),
        changes: [change],
        answers: { id: notCheckedId, start },
        preferred: false,
      },
    ];
  });
}

function fileName(uri: string): string {
  const name = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

function withoutRepeats(actions: readonly Action[]): Action[] {
  const seen = new Set<string>();
  return actions.filter(({ title, changes }) => {
    const key = `${title} ${changes.map(({ uri, start, text }) => `${uri} ${start} ${text}`).join(" ")}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
