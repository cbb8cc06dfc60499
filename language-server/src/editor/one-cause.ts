import { label } from "../design/facts.js";
import type { Severity } from "../design/model.js";
import { givens } from "../physics/figure.js";
import { absolute } from "../place.js";
import { comparedIn } from "./compared.js";
import type { Span } from "./navigate.js";
import type { PlacedNotice, WorkspaceView } from "./workspace-view.js";

/** From so many findings on, they are told of once. Two on two strings are still two things to look at. */
const several = 3;
/** A name that nothing has is missing once, however many lines say it. */
const severalNames = 2;

export interface Gathered {
  readonly placed: PlacedNotice;
  /** The same finding elsewhere. */
  readonly also: readonly { readonly span: Span; readonly message: string }[];
}

/**
 * Findings of one rule in one file that rest on the same figures of the same part sheets have one cause: a wrong part
 * does not light up ten lines. So have names that nothing has. The worst, and of equals the first in the text, stays; the others are told of with it.
 */
export function gathered(
  view: WorkspaceView,
  notices: readonly PlacedNotice[],
  severityOf: (placed: PlacedNotice) => Severity,
): Gathered[] {
  const byCause = new Map<string, PlacedNotice[]>();
  for (const placed of notices) {
    const cause = causeOf(view, placed);
    if (cause === undefined) continue;
    const same = byCause.get(cause);
    if (same) same.push(placed);
    else byCause.set(cause, [placed]);
  }
  const also = new Map<PlacedNotice, Gathered["also"]>();
  const told = new Set<PlacedNotice>();
  for (const same of byCause.values()) {
    if (same.length < (same[0]!.notice.problem ? severalNames : several)) continue;
    const [first, ...others] = [...same].sort((a, b) => ranks[severityOf(a)] - ranks[severityOf(b)]);
    for (const other of others) told.add(other);
    also.set(first!, others.map(elsewhere));
  }
  return notices.filter((placed) => !told.has(placed)).map((placed) => ({ placed, also: also.get(placed) ?? [] }));
}

const ranks: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

function elsewhere({ notice }: PlacedNotice): { span: Span; message: string } {
  if (notice.problem) return { span: absolute(notice.place), message: `${notice.problem.missing} is named here too` };
  const on = notice.check ? label(notice.check.thing) : "it";
  return { span: absolute(notice.place), message: `The same on ${on}: ${whatOf(notice)}` };
}

function whatOf({ check, message }: PlacedNotice["notice"]): string {
  return check?.outcome.outcome === "finding" ? check.outcome.what : message;
}

/** The missing name, or the rule with the part-sheet figures that a finding rests on; undefined where it rests on none. */
function causeOf(view: WorkspaceView, { notice, assessment }: PlacedNotice): string | undefined {
  const { check, problem } = notice;
  if (problem?.missing !== undefined) return `${problem.id} ${problem.missing}`;
  if (check?.outcome.outcome !== "finding") return undefined;
  const places = new Set<string>();
  for (const { value, limit } of comparedIn(check)) {
    for (const figure of [value, limit]) {
      for (const { origin } of givens(figure)) {
        const { place } = origin;
        if (!place || !isOnSheet(view, place)) continue;
        const { uri, start } = absolute(place);
        places.add(`${uri} ${start}`);
      }
    }
  }
  if (places.size === 0) return undefined;
  return [assessment.design.entry, check.rule.id, ...[...places].sort()].join("|");
}

function isOnSheet(view: WorkspaceView, place: PlacedNotice["notice"]["place"]): boolean {
  const fragment = view.fragmentOf(place);
  return (
    fragment?.declarations.some(
      ({ declares, place: whole }) => declares === "part" && whole.from <= place.from && place.to <= whole.to,
    ) === true
  );
}
