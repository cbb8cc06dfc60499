import type { Assessment, Check } from "../../assessment/assessment.js";
import { hasMargin } from "../../assessment/margin.js";
import { placeOf, placeOfFinding } from "../../assessment/spots.js";
import { label } from "../../design/facts.js";
import { formatNumber } from "../../physics/display.js";
import type { Figure } from "../../physics/figure.js";
import { formatApart } from "../../physics/working.js";
import type { Place } from "../../place.js";
import type { Table } from "./table.js";

/** How much of its limit one check uses: 1 is all of it. */
export interface Margin {
  /** Its name, "S1 · string-voltage · INV"; with a number where another is called the same. */
  readonly id: string;
  readonly place: Place;
  readonly rule: string;
  readonly thing: string;
  readonly used: number;
  readonly outcome: "pass" | "finding" | "departure";
  /** "498.1 V against 600 V". */
  readonly words: string;
  /** What the figure is held against, where that is not the thing itself; of what does not hold, the limit's symbol. */
  readonly against?: string;
}

export interface Margins {
  /** The tightest first. */
  readonly margins: readonly Margin[];
  /** Passes with figures of which no share says how near the limit is. */
  readonly chosenToReach: number;
  /** Passes and findings that compare no figures. */
  readonly withoutFigures: number;
  readonly notChecked: number;
}

export function marginsOf(assessment: Assessment): Margins {
  const margins: Omit<Margin, "id">[] = [];
  let [chosenToReach, withoutFigures, notChecked] = [0, 0, 0];
  for (const check of assessment.checks) {
    const { outcome } = check;
    const margin = marginOf(check);
    if (margin && outcome.outcome === "pass" && !hasMargin(outcome.value!, outcome.limit!)) chosenToReach++;
    else if (margin) margins.push(margin);
    else if (outcome.outcome === "not-checked") notChecked++;
    else if (outcome.outcome !== "not-applicable") withoutFigures++;
  }
  margins.sort((a, b) => b.used - a.used);
  return { margins: named(margins), chosenToReach, withoutFigures, notChecked };
}

function named(margins: readonly Omit<Margin, "id">[]): Margin[] {
  const counted = new Map<string, number>();
  return margins.map((margin) => {
    const name = [margin.thing, margin.rule, margin.against].filter(Boolean).join(" · ");
    const count = (counted.get(name) ?? 0) + 1;
    counted.set(name, count);
    return { id: count === 1 ? name : `${name} (${count})`, ...margin };
  });
}

function marginOf({ rule, thing, outcome }: Check): Omit<Margin, "id"> | undefined {
  const about = { rule: rule.id, thing: label(thing), place: placeOf({ thing }) };
  if (outcome.outcome === "pass") {
    const { value, limit, utilisation, against } = outcome;
    const heldAgainst = against !== undefined && against !== about.thing && { against };
    if (utilisation === undefined || !Number.isFinite(utilisation) || !value || !limit) return undefined;
    return { ...about, used: utilisation, outcome: "pass", words: compared(value, limit), ...heldAgainst };
  }
  if (outcome.outcome !== "finding" && outcome.outcome !== "departure") return undefined;
  const { value, limit, spot } = outcome.outcome === "finding" ? outcome : outcome.finding;
  if (!value || !limit || value.value === 0 || limit.value === 0) return undefined;
  // What is found lies beyond its limit, above an upper one or below a lower one.
  const ratio = Math.abs(value.value / limit.value);
  const used = Math.max(ratio, 1 / ratio);
  const place = placeOfFinding(spot);
  const words = compared(value, limit);
  return { ...about, place, used, outcome: outcome.outcome, words, against: limit.symbol };
}

function compared(value: Figure, limit: Figure): string {
  const [own, bound] = formatApart(value, limit);
  return `${own} against ${bound}`;
}

/** The same in rows. */
export function marginsTable(assessment: Assessment): Table {
  return {
    caption: "How much of each limit is used, the tightest first",
    columns: ["thing", "rule", "used", "compared", "with", "outcome"],
    rows: marginsOf(assessment).margins.map(({ id, thing, rule, used, words, against = "", outcome }) => ({
      id,
      cells: [thing, rule, shareText(used), words, against, outcome],
    })),
  };
}

export function shareText(used: number): string {
  return `${formatNumber(used * 100, 3)} %`;
}
