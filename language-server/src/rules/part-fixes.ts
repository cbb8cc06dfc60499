import { given, wordOf } from "../design/facts.js";
import { type Item, isWrittenHere, type Part, type Run, type Thing } from "../design/things.js";
import { formatNumber, formatValue } from "../physics/display.js";
import type { Figure, Given } from "../physics/figure.js";
import type { Judge } from "./judge.js";
import type { Fix } from "./rule.js";

/** Fixes that choose another part from those in scope. */

/** More than a few offers of one kind are no help. */
const offers = 3;

export interface PartQuestion {
  /** The item whose part is to be changed, or the run whose cable is. */
  readonly thing: Item | Run;
  /** Properties that decide: where the item states one of them itself, another part would not change it. */
  readonly properties: readonly string[];
  /** The figure after the fix ("800 V, 79 %"), or undefined for a part that does not hold either. */
  readonly preview: (part: Part) => string | undefined;
  /** Smallest first: what parts are ordered by. */
  readonly order?: (part: Part) => number;
}

/** Parts in scope of the thing's own kind that would hold, the smallest first. */
export function partFixes(judge: Judge, question: PartQuestion): Fix[] {
  const { thing, properties, preview, order } = question;
  if (!isChosenHere(thing) || states(thing, properties)) return [];
  const now = thing.is === "run" ? thing.cable : thing.part;
  const kind = thing.is === "run" ? "cable" : now?.kind;
  const fixes: { fix: Fix; rank: number }[] = [];
  for (const part of judge.parts.values()) {
    if (part.kind !== kind || part === now) continue;
    if (thing.is === "item" && !keepsPorts(thing, part)) continue;
    const after = preview(part);
    if (after !== undefined) fixes.push({ fix: partFix(thing, part, after), rank: order?.(part) ?? 0 });
  }
  return fixes
    .sort((a, b) => a.rank - b.rank)
    .slice(0, offers)
    .map(({ fix }) => fix);
}

/**
 * Parts of the d.c. side whose rating is at least a figure, with the share that it uses: the most common question.
 * `keeps` names properties in which the other part must not be less than the one that is there.
 */
export function strongerParts(
  judge: Judge,
  thing: Item | Run,
  property: string,
  load: Figure,
  keeps: readonly string[] = [],
): Fix[] {
  const now = thing.is === "run" ? thing.cable : thing.part;
  const isNoWorse = (part: Part): boolean =>
    keeps.every((name) => isAtLeast(given(part, name), now && given(now, name)));
  return partFixes(judge, {
    thing,
    properties: [property],
    preview: (part) =>
      wordOf(part, "supply") !== "ac" && isNoWorse(part) ? ratingPreview(given(part, property), load) : undefined,
    order: (part) => given(part, property)?.value ?? 0,
  });
}

function isAtLeast(figure: Given | undefined, bound: Given | undefined): boolean {
  return bound === undefined || (figure !== undefined && figure.value >= bound.value);
}

function ratingPreview(rating: Given | undefined, load: Figure): string | undefined {
  if (!rating || rating.value < load.value) return undefined;
  return `${formatValue(rating.value, rating.dimension, rating.unit)}, ${percent(load.value / rating.value)}`;
}

function partFix(thing: Item | Run, part: Part, preview: string): Fix {
  const common = { title: `Make ${thing.id} a ${part.name}`, preview: `${part.name}: ${preview}`, thing };
  if (thing.is === "item") return { ...common, does: "set-part", part: part.name };
  return { ...common, title: `Lay ${thing.id} in ${part.name}`, does: "set-cable", cable: part.name };
}

/** Whether the design names the part here, and not on the sheet of another part. */
function isChosenHere(thing: Item | Run): boolean {
  if (thing.is === "run") return thing.declaration.cable !== undefined;
  return thing.declaration.part !== undefined && isWrittenHere(thing);
}

function states(thing: Thing, properties: readonly string[]): boolean {
  return thing.declaration.properties.some(({ name }) => properties.includes(name));
}

/** A part that lacks a port that the item has now may leave runs without an end. */
function keepsPorts(item: Item, part: Part): boolean {
  const names = new Set(part.declaration.nested.map(({ name }) => name));
  return item.children.every((child) => item.declaration.nested.includes(child.declaration) || names.has(child.name));
}

/** `85 %`: for previews and messages. */
export function percent(ratio: number): string {
  return `${formatNumber(ratio * 100, 2)} %`;
}
