import type { Assessment } from "../../assessment/assessment.js";
import { kindRow } from "../../design/schema/index.js";
import type { Part } from "../../design/things.js";
import { pathBetween } from "../../language/files.js";
import { type Head, isComplete } from "../../language/head.js";
import { fragmentAt } from "../fragment-at.js";
import type { Span } from "../navigate.js";
import { sortOfItem, thingSort } from "../thing-sort.js";
import type { WorkspaceView } from "../workspace-view.js";
import { nameOffers } from "./free-names.js";
import { freeWayOffers } from "./free-ways.js";
import { partOffers, targetOffers, terminalOffers, withNested } from "./names-offers.js";
import type { Offer } from "./offer.js";
import { propertiesBehind } from "./properties-behind.js";
import { endOffers } from "./run-ends.js";
import {
  declarationOffers,
  memberOffers,
  nestedKindOffers,
  partKindOffers,
  ruleOffers,
  unitOffers,
  valueOffers,
} from "./schema-offers.js";
import { type Wanted, wantedAt, wantedProperty } from "./wanted.js";
import { wholeOffers } from "./whole-offers.js";

export interface Completion {
  readonly offers: readonly Offer[];
  /** What an offer replaces: the half-typed word before the cursor. */
  readonly span: Span;
}

export interface Asked {
  readonly docs?: string;
  /** The character whose typing asked, where nobody pressed a key for it: then only plain answers are given. */
  readonly typed?: string;
}

/** What may be written at an offset, best first. Works in half-typed text. */
export function completeAt(view: WorkspaceView, uri: string, offset: number, asked: Asked): Completion | undefined {
  const text = view.sources.text(uri);
  const fragments = view.sources.fragments(uri);
  const fragment = fragmentAt(fragments, offset);
  if (text === undefined || !fragment) return undefined;
  const wanted = wantedAt(text, fragment.chunk.start, offset);
  const assessment = view.assessments(uri)[0];
  const units = unitsFor(wanted, offset, uri);
  if (units) return units;
  const isNewLine = wanted.first && isBoundary(wanted.state);
  if (asked.typed !== undefined && (isNewLine || wanted.state === "start" || wanted.state === "after-value"))
    return undefined;
  const chunk = text.slice(fragment.chunk.start, fragments[fragments.indexOf(fragment) + 1]?.chunk.start);
  const offers =
    isNewLine || wanted.state === "after-value"
      ? beginnings(wanted, text, offset, assessment)
      : inSentence(wanted, view, uri, assessment, asked, chunk);
  if (offers.length === 0) return undefined;
  return { offers, span: { uri, start: wanted.from, end: offset } };
}

function isBoundary(state: Wanted["state"]): boolean {
  if (state === "value" || state === "text" || state === "nothing") return false;
  return state === "after-value" || state === "error" || isComplete(state);
}

/** A new declaration, or a new member of the block the cursor is in. */
function beginnings(wanted: Wanted, text: string, offset: number, assessment: Assessment | undefined): Offer[] {
  const block = wanted.blocks[wanted.blocks.length - 1];
  if (!block) return [...declarationOffers(), ...(assessment ? wholeOffers(assessment) : [])];
  if (!block.row) return [];
  const written = new Set([...block.written, ...propertiesBehind(text, offset)]);
  return memberOffers(block.row, written, partCalled(assessment, block.head.part));
}

function partCalled(assessment: Assessment | undefined, name: string | undefined): Part | undefined {
  return name === undefined ? undefined : assessment?.design.parts.get(name);
}

function inSentence(
  wanted: Wanted,
  view: WorkspaceView,
  uri: string,
  assessment: Assessment | undefined,
  asked: Asked,
  chunk: string,
): Offer[] {
  const { state, head, path } = wanted;
  if (path.length > 0) return assessment ? terminalOffers(assessment, path) : [];
  switch (state) {
    case "start":
      return beginnings(wanted, view.sources.text(uri) ?? "", wanted.from + wanted.prefix.length, assessment);
    case "value":
      return propertyValue(wanted, assessment);
    case "text":
      return head.begins === "use" ? fileOffers(view, uri) : [];
    case "part-is":
      return partKindOffers();
    case "is":
    case "part-wanted":
      return assessment ? partOffers(assessment.design, wantedPart(head.kind)) : [];
    case "run":
      return assessment ? nameOffers(assessment.design, "run") : [];
    case "kind":
      return assessment && isNamed(wanted) ? nameOffers(assessment.design, head.kind ?? "") : [];
    case "way":
      return assessment ? freeWayOffers(assessment, wanted, chunk) : [];
    case "way-kind":
      return nestedKindOffers(wanted.blocks[wanted.blocks.length - 1]?.row);
    case "run-from":
      return assessment ? endOffers(assessment, "out", []) : [];
    case "run-to":
      return assessment ? endOffers(assessment, "in", head.from ?? []) : [];
    case "run-of":
      return assessment ? partOffers(assessment.design, "cable") : [];
    case "measured":
    case "serves":
      return assessment ? targetOffers(assessment) : [];
    case "departure":
      return ruleOffers(assessment, asked.docs, false);
    case "expect":
      return ruleOffers(assessment, asked.docs, true);
    case "departure-on":
    case "expect-on":
      return assessment ? targetOffers(assessment, head.rule) : [];
    default:
      return state === "nothing" || state === "after-value" ? [] : keywords(state);
  }
}

/** Whether a thing of the kind has a name: `earthing { … }` has none. */
function isNamed({ head, blocks }: Wanted): boolean {
  const outer = blocks[blocks.length - 1]?.row?.kind;
  const row = head.kind === undefined ? undefined : kindRow(head.kind, outer);
  return row !== undefined && row.declaredAs !== "block";
}

function wantedPart(kind: string | undefined): string {
  return kind === "string" ? "module" : (kind ?? "");
}

/** Words that carry a sentence on. */
const following: Partial<Record<Head, readonly string[]>> = {
  "part-name": ["is"],
  "run-name": ["from"],
  "run-start": ["to"],
  "run-unit": ["of"],
  "measured-item": ["on"],
  "departure-rule": ["on"],
  "departure-item": ["because"],
  "expect-rule": ["on"],
  name: ["is", "serves"],
  count: ["x"],
  "item-part": ["serves"],
};

function keywords(state: Head): Offer[] {
  return (following[state] ?? []).map((label) => ({ label, sort: "keyword" }));
}

function propertyValue(wanted: Wanted, assessment: Assessment | undefined): Offer[] {
  const row = wantedProperty(wanted);
  if (!row) return [];
  if (row.shape.is !== "mention") return valueOffers(row);
  const { kinds } = row.shape;
  const block = wanted.blocks[wanted.blocks.length - 1];
  const part = partCalled(assessment, block?.head.part);
  const nested = part?.declaration.nested ?? [];
  if (nested.length > 0)
    return nested
      .filter((declaration) => kinds.includes(declaration.kind))
      .map(({ name, kind }): Offer => ({ label: name, sort: thingSort(kind, part?.kind, undefined), detail: kind }));
  const items = assessment ? [...withNested(assessment.design.items)] : [];
  return items
    .filter(({ kind }) => kinds.includes(kind))
    .map((item): Offer => ({ label: item.id, sort: sortOfItem(item), detail: item.kind }));
}

/** Units for the number that the cursor stands at or behind. */
function unitsFor(wanted: Wanted, offset: number, uri: string): Completion | undefined {
  const { number, state } = wanted;
  if (!number || wanted.prefix !== "") return undefined;
  const parts = /^([+\-−]?\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?)([ \t\u00a0\u202f]*)(.*)$/u.exec(number.image);
  if (!parts) return undefined;
  const [, digits = "", , unit = ""] = parts;
  const end = number.from + number.image.length;
  // Behind a blank after a whole quantity the sentence goes on.
  if (unit !== "" && offset > end) return undefined;
  const shape =
    state === "run-unit" ? ({ is: "quantity", dimensions: ["length"] } as const) : wantedProperty(wanted)?.shape;
  if (!shape) return undefined;
  const offers = unitOffers(shape, Number(digits.replace(",", ".").replace("−", "-")));
  if (offers.length === 0) return undefined;
  const start = unit === "" ? offset : end - unit.length;
  const glued = start === number.from + digits.length;
  const spaced = glued ? offers.map((offer) => ({ ...offer, insert: ` ${offer.label}` })) : offers;
  return { offers: spaced, span: { uri, start, end: offset } };
}

/** Other files that can be used, as paths. */
function fileOffers(view: WorkspaceView, uri: string): Offer[] {
  const used = new Set(view.sources.reach(uri));
  return [...view.sources.uris()]
    .filter((other) => other !== uri && !used.has(other))
    .map((other): Offer => ({ label: pathBetween(uri, other), sort: "file" }));
}
