import { displayUnit, unitsOf } from "@sunwright/grammar";
import type { Assessment } from "../../assessment/assessment.js";
import { problemTitles } from "../../assessment/problem-ids.js";
import {
  type KindRow,
  kindRow,
  kindsWithin,
  type PropertyRow,
  partKinds,
  partRow,
  type Shape,
  topLevelKinds,
} from "../../design/schema/index.js";
import type { Part } from "../../design/things.js";
import { findProperty } from "../../design/things.js";
import { rules } from "../../rules/index.js";
import { valueText } from "../hover/thing.js";
import { kindText, propertyText, ruleText, shortNumber } from "../markdown.js";
import type { Offer } from "./offer.js";

const sentences: readonly (readonly [word: string, means: string])[] = [
  ["use", 'Takes in another file: `use "parts/roof.sun"`'],
  ["part", "What a catalogue sheet says: `part NAME is KIND { … }`"],
  ["run", "A cable from one terminal to another: `run W1 from S1 to Q1: 18 m of CABLE`"],
  ["measured", "What was measured on site: `measured S1 on 2026-06-12 { … }`"],
  ["departure", 'Departs from a rule, in writing: `departure RULE on ITEM because "…"`'],
  ["expect", "A finding that is meant, in a training design: `expect RULE on ITEM`"],
];

/** Words that a declaration may begin with. */
export function declarationOffers(): Offer[] {
  const words = sentences.map(([label, documentation]): Offer => ({ label, sort: "keyword", documentation }));
  return [...topLevelKinds().map((kind) => kindOffer(kind, kindRow(kind))), ...words];
}

/**
 * What may stand in a block: properties not yet written, the usual ones first, then what can be nested. Where a sheet is
 * given, what no sheet prints comes before what this one leaves out.
 */
export function memberOffers(row: KindRow, written: ReadonlySet<string>, part: Part | undefined): Offer[] {
  const open = row.properties.filter(({ name }) => !written.has(name));
  const stated = (property: PropertyRow): boolean =>
    part !== undefined && findProperty(part, property.name) !== undefined;
  const rank = (property: PropertyRow): number => {
    if (stated(property)) return 3;
    if (property.essential) return 0;
    return part !== undefined && property.onSite ? 1 : 2;
  };
  const ordered = open.sort((a, b) => rank(a) - rank(b));
  return [...ordered.map((property) => propertyOffer(property, part)), ...nestedKindOffers(row)];
}

/** What may be nested in a block. */
export function nestedKindOffers(row: KindRow | undefined): Offer[] {
  if (!row) return [];
  return [...new Set(kindsWithin(row.kind))].map((kind) => kindOffer(kind, kindRow(kind, row.kind)));
}

function propertyOffer(row: PropertyRow, part: Part | undefined): Offer {
  const stated = part && findProperty(part, row.name);
  return {
    label: row.name,
    sort: "property",
    detail: stated ? `${stated.label} says ${valueText(stated.property)}` : usual(row),
    documentation: propertyText(row),
    insert: `${row.name}: `,
  };
}

/** `Uoc, typical 38.9 V` */
function usual({ symbol, typical }: PropertyRow): string | undefined {
  const texts = [symbol, typical === undefined ? undefined : `typical ${typical}`].filter(Boolean);
  return texts.length === 0 ? undefined : texts.join(", ");
}

function kindOffer(kind: string, row: KindRow | undefined): Offer {
  return { label: kind, sort: "kind", detail: row?.title, documentation: row && kindText(row) };
}

/** Kinds that a part may be of. */
export function partKindOffers(): Offer[] {
  return partKinds().map((kind) => kindOffer(kind, partRow(kind)));
}

/** Values that are words. Figures are never offered: a guessed figure looks like a known one. */
export function valueOffers(row: PropertyRow): Offer[] {
  const { shape } = row;
  const documentation = propertyText(row);
  if (shape.is === "flag") return ["yes", "no"].map((label) => ({ label, sort: "word", documentation }));
  if (shape.is === "words") return shape.words.map((label) => ({ label, sort: "word", documentation }));
  return [];
}

/** Units of a property, with what the number would be in the others. */
export function unitOffers(shape: Shape, written: number): Offer[] {
  if (shape.is === "list") return unitOffers(shape.of, written);
  if (shape.is !== "quantity" && shape.is !== "range") return [];
  return shape.dimensions.flatMap((dimension) =>
    unitsOf(dimension).map(
      ({ name }): Offer => ({ label: name, sort: "unit", detail: `${shortNumber(written)} ${displayUnit(name)}` }),
    ),
  );
}

/** Rules of the design's rule set, those with an open finding first. */
export function ruleOffers(
  assessment: Assessment | undefined,
  docs: string | undefined,
  withProblems: boolean,
): Offer[] {
  const open = new Set<string>();
  for (const { rule, outcome } of assessment?.told ?? []) if (outcome.outcome === "finding") open.add(rule.id);
  const ordered = [...rules].sort((a, b) => Number(open.has(b.id)) - Number(open.has(a.id)));
  const offers = ordered.map(
    (rule): Offer => ({
      label: rule.id,
      sort: "rule",
      detail: open.has(rule.id) ? "has a finding here" : rule.section,
      documentation: ruleText(rule, docs),
    }),
  );
  if (!withProblems) return offers;
  const problems = Object.entries(problemTitles).map(
    ([label, documentation]): Offer => ({ label, sort: "rule", detail: "of the text itself", documentation }),
  );
  return [...offers, ...problems];
}
