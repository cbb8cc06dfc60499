import type { Assessment, Check } from "../assessment/assessment.js";
import type { Severity } from "../design/model.js";
import type { Item, Thing } from "../design/things.js";
import type { Mark } from "./diagram.js";

const ranks: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** Findings and departures, the worst first and then in the order of the checks. */
export function marksOf(assessment: Assessment): Mark[] {
  const found = assessment.checks.flatMap((check) => markOf(check) ?? []);
  const rank = (mark: Omit<Mark, "number">): number => (mark.departed ? 3 : ranks[mark.severity]);
  return found.sort((a, b) => rank(a) - rank(b)).map((mark, index) => ({ ...mark, number: index + 1 }));
}

function markOf({ rule, thing, outcome }: Check): Omit<Mark, "number"> | undefined {
  const at = drawnAs(thing);
  if (outcome.outcome === "finding")
    return { at, severity: outcome.severity ?? rule.severity, rule: rule.id, text: outcome.what, departed: false };
  if (outcome.outcome === "departure")
    return {
      at,
      severity: "note",
      rule: rule.id,
      text: `${outcome.finding.what} Departed from: ${outcome.departure.reason}`,
      departed: true,
    };
  return undefined;
}

/** The thing of the picture that a check is about; a port's is its inverter. */
function drawnAs(thing: Thing): string | undefined {
  if (thing.is === "run") return thing.id;
  if (thing.is === "reading") return drawnAs(thing.target);
  return thing.is === "item" ? bearer(thing).id : undefined;
}

function bearer(item: Item): Item {
  return item.parent?.kind === "inverter" ? item.parent : item;
}

/** "41 pass, 2 findings, 1 departure, 3 not checked": what did not come out is said as well. */
export function countedChecks(assessment: Assessment): string {
  const counts = new Map<string, number>();
  for (const { outcome } of assessment.checks) counts.set(outcome.outcome, (counts.get(outcome.outcome) ?? 0) + 1);
  const count = (word: string): number => counts.get(word) ?? 0;
  const several = (word: string, one: string, more: string): string =>
    `${count(word)} ${count(word) === 1 ? one : more}`;
  return [
    several("pass", "check passed", "checks passed"),
    several("finding", "finding", "findings"),
    several("departure", "departure", "departures"),
    `${count("not-checked")} not checked`,
  ].join(", ");
}
