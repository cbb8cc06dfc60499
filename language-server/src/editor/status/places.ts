import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import { placeOf } from "../../assessment/spots.js";
import { label } from "../../design/facts.js";
import type { Severity } from "../../design/model.js";
import { absolute } from "../../place.js";
import { type Compared, comparedIn, tightestOf } from "../compared.js";
import { type Mark, type MarkSettings, marksOf } from "../diagnostics.js";
import type { Span } from "../navigate.js";
import { notCheckedId } from "../pages.js";
import { percent } from "../percent.js";
import { severityWord } from "../severity-word.js";
import { whatIfId } from "../what-if/marks.js";
import type { WorkspaceView } from "../workspace-view.js";

/** Something to go to from a design's verdict. */
export interface StatusPlace {
  readonly sort: "finding" | "departure" | "not-checked" | "margin";
  /** "string-voltage on S1". */
  readonly title: string;
  /** How bad a finding is. */
  readonly severity?: Severity;
  /** "error", "98.4 % of its limit"; nothing where the title says it all. */
  readonly note?: string;
  readonly detail?: string;
  readonly span: Span;
}

/** So many margins are worth a look; the hovers have them all. */
const marginsShown = 8;

const ranks = { error: 0, warning: 1, note: 2, hint: 3 } as const;

/** What there is to look at in the design that begins in a file: findings, the worst first, departures, what was not checked, then margins. */
export function statusPlaces(view: WorkspaceView, entry: string, settings: MarkSettings): StatusPlace[] {
  const assessment = view.assessment(entry);
  const marks = view.filesOf(entry).flatMap(({ uri }) => marksOf(view, uri, { ...settings, notChecked: "hint" }));
  const found = marks
    .filter(({ severity, id }) => severity !== "hint" && id !== whatIfId)
    .sort((a, b) => ranks[a.severity] - ranks[b.severity]);
  return [
    ...found.filter(({ isDeparture }) => !isDeparture).map(findingPlace),
    ...found.filter(({ isDeparture }) => isDeparture).map(departurePlace),
    ...marks.filter(({ id }) => id === notCheckedId).map(notCheckedPlace),
    ...margins(view, assessment),
  ];
}

function findingPlace({ id, thing, severity, message, span }: Mark): StatusPlace {
  return {
    sort: "finding",
    title: titleOf(id, thing),
    ...(severity === "hint" ? {} : { severity, note: severityWord(severity) }),
    detail: message,
    span,
  };
}

function departurePlace({ id, thing, message, span }: Mark): StatusPlace {
  return { sort: "departure", title: titleOf(id, thing), detail: message, span };
}

function notCheckedPlace({ thing, message, span }: Mark): StatusPlace {
  return { sort: "not-checked", title: thing ?? "", detail: message, span };
}

function margins(view: WorkspaceView, { checks }: Assessment): StatusPlace[] {
  const closest = new Map<string, Compared>();
  for (const check of checks) {
    if (check.outcome.outcome !== "pass") continue;
    const title = titleOf(check.rule.id, label(check.thing));
    const tightest = tightestOf(comparedIn(check).filter(({ share }) => share <= 1));
    if (tightest && tightest.share > (closest.get(title)?.share ?? 0)) closest.set(title, tightest);
  }
  return [...closest]
    .sort(([, a], [, b]) => b.share - a.share)
    .slice(0, marginsShown)
    .map(([title, { check, share }]) => ({ title, share, place: placeOf({ thing: check.thing }) }))
    .filter(({ place }) => view.isLive(place))
    .map(({ title, share, place }) => ({
      sort: "margin" as const,
      title,
      note: l10n.t("{0} of its limit", percent(share)),
      span: absolute(place),
    }));
}

function titleOf(id: string, thing: string | undefined): string {
  return thing === undefined ? id : l10n.t("{0} on {1}", id, thing);
}
