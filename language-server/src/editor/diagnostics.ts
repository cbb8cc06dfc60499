import type { Assessment, Check } from "../assessment/assessment.js";
import { type ChosenSeverity, noSeverities, type Severities, shownSeverity } from "../assessment/severities.js";
import { label } from "../design/facts.js";
import type { Severity } from "../design/model.js";
import type { Thing } from "../design/things.js";
import { absolute } from "../place.js";
import type { Span } from "./navigate.js";
import { type Gathered, gathered } from "./one-cause.js";
import { notCheckedId, pageOf } from "./pages.js";
import type { Settings } from "./settings.js";
import { isNotChecked, missingText } from "./unknowns.js";
import { markedWhatIf, whatIfMarks } from "./what-if/marks.js";
import type { PlacedNotice, WorkspaceView } from "./workspace-view.js";

/** What of the user's settings decides how a file is marked. */
export type MarkSettings = Pick<Settings, "notChecked" | "docs"> & {
  /** What the findings of a design are shown as, by the file that the design begins in. */
  readonly severities?: (entry: string) => Severities;
};

/** A squiggle, in offsets. */
export interface Mark {
  readonly span: Span;
  readonly severity: Severity | "hint";
  readonly id: string;
  readonly message: string;
  /** Page that explains the id. */
  readonly page?: string;
  readonly unnecessary: boolean;
  /** Whether it is a finding that somebody has answered for. */
  readonly isDeparture?: boolean;
  readonly related: readonly { readonly span: Span; readonly message: string }[];
  /** The thing it is about, for whoever acts on it. */
  readonly thing?: string;
}

/** Everything to mark in a file, in the order of its text: findings, problems, and what could not be checked. */
export function marksOf(view: WorkspaceView, uri: string, settings: MarkSettings): Mark[] {
  const marks = [
    ...whatIfMarks(view, uri),
    ...findingMarks(view, uri, settings),
    ...(settings.notChecked === "off" ? [] : hintsOf(view, uri, settings)),
  ];
  return marks.sort((a, b) => a.span.start - b.span.start);
}

function findingMarks(view: WorkspaceView, uri: string, settings: MarkSettings): Mark[] {
  const severityOf = ({ notice, assessment }: PlacedNotice): ChosenSeverity => {
    const severities = settings.severities?.(assessment.design.entry) ?? noSeverities;
    return (notice.check && shownSeverity(notice.check, severities)) ?? notice.severity;
  };
  const shown = view.notices(uri).filter((placed) => severityOf(placed) !== "off");
  const visible = (placed: PlacedNotice): Severity => severityOf(placed) as Severity;
  return gathered(view, shown, visible).map((one) => markOf(view, one, visible(one.placed), settings));
}

function markOf(
  view: WorkspaceView,
  { placed: { notice, assessment }, also }: Gathered,
  severity: Severity,
  settings: MarkSettings,
): Mark {
  const related = notice.related
    .filter(({ place }) => view.isLive(place))
    .map(({ place, message }) => ({ span: absolute(place), message }));
  const elsewhere = notice.check && whereUsed(view, notice.check, notice.place.chunk.uri, assessment);
  if (elsewhere) related.push(elsewhere);
  related.push(...also);
  return {
    span: absolute(notice.place),
    severity,
    id: notice.id,
    message: notice.check ? markedWhatIf(notice.message, [notice.check], assessment) : notice.message,
    page: pageOf(notice.id, settings.docs),
    unnecessary: notice.unnecessary ?? false,
    isDeparture: notice.check?.outcome.outcome === "departure",
    related,
    thing: notice.check && label(notice.check.thing),
  };
}

/** A finding that stands in a parts file says which item of which design it is about. */
function whereUsed(
  view: WorkspaceView,
  check: Check,
  uri: string,
  { design }: Assessment,
): { span: Span; message: string } | undefined {
  const item = topOf(check.thing);
  const place = item.declaration.namePlace;
  if (uri === design.entry || place.chunk.uri === uri || !view.isLive(place)) return undefined;
  return { span: absolute(place), message: `${label(check.thing)} in this design` };
}

function topOf(thing: Thing): Thing {
  let top = thing;
  while (top.is === "item" && top.parent) top = top.parent;
  return top;
}

/** One hint a thing that something could not be checked on, naming what is missing. */
function hintsOf(view: WorkspaceView, uri: string, settings: MarkSettings): Mark[] {
  const hints = new Map<string, Mark>();
  for (const assessment of view.assessments(uri)) {
    const byThing = new Map<string, { thing: Thing; checks: Check[] }>();
    for (const check of assessment.told) {
      if (!isNotChecked(check) || check.thing.declaration.namePlace.chunk.uri !== uri) continue;
      const key = label(check.thing);
      const entry = byThing.get(key);
      if (entry) entry.checks.push(check);
      else byThing.set(key, { thing: check.thing, checks: [check] });
    }
    for (const { thing, checks } of byThing.values()) {
      const place = thing.declaration.namePlace;
      if (view.fragmentOf(place)?.broken !== false) continue;
      const mark = hint(view, thing, checks, assessment, settings);
      hints.set(`${mark.span.start} ${mark.message}`, mark);
    }
  }
  return [...hints.values()];
}

function hint(
  view: WorkspaceView,
  thing: Thing,
  checks: readonly Check[],
  assessment: Assessment,
  settings: MarkSettings,
): Mark {
  const place = thing.declaration.namePlace;
  const texts = [...new Set(checks.map(lineOf))];
  return {
    span: absolute(place),
    severity: "hint",
    id: notCheckedId,
    message: markedWhatIf(`Not checked on ${label(thing)}: ${texts.join("; ")}.`, checks, assessment),
    page: pageOf(notCheckedId, settings.docs),
    unnecessary: false,
    related: missingPlaces(view, checks),
    thing: label(thing),
  };
}

const lines = new WeakMap<Check, string>();

/** Checks live on from one version to the next where nothing about them changed, and so does their text. */
function lineOf(check: Check): string {
  let line = lines.get(check);
  if (line === undefined) {
    line = isNotChecked(check) ? `${check.rule.id}: ${missingText(check)}` : check.rule.id;
    lines.set(check, line);
  }
  return line;
}

/** The sheets and items that lack something, other than the thing itself. */
function missingPlaces(view: WorkspaceView, checks: readonly Check[]): Mark["related"] {
  const places = new Map<string, { span: Span; message: string }>();
  for (const check of checks) {
    if (!isNotChecked(check)) continue;
    for (const { thing, property } of check.outcome.missing) {
      const place = thing.declaration.namePlace;
      if (thing === check.thing || !view.isLive(place)) continue;
      const message = `${label(thing)} does not state ${property}`;
      places.set(message, { span: absolute(place), message });
    }
  }
  return [...places.values()];
}
