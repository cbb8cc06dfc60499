import { fact, given } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { formatValue } from "../physics/display.js";
import type { Figure } from "../physics/figure.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";

/**
 * Parts in scope of a thing's own kind whose rating is at least a figure. In the properties that are named they say the
 * same as the part that is there.
 */
export function strongerAcParts(
  judge: Judge,
  thing: Item,
  property: string,
  load: Figure,
  keeps: readonly string[] = [],
): Fix[] {
  return partFixes(judge, {
    thing,
    properties: [property],
    preview: (part) => {
      const rating = given(part, property);
      if (!rating || rating.value < load.value || !keeps.every((name) => agrees(part, thing, name))) return undefined;
      return `${formatValue(rating.value, rating.dimension, rating.unit)}, ${percent(load.value / rating.value)}`;
    },
    order: (part) => given(part, property)?.value ?? 0,
  });
}

function agrees(part: Part, thing: Item, name: string): boolean {
  const now = fact(thing, name)?.value;
  const then = fact(part, name)?.value;
  if (now === undefined) return true;
  if (now.kind === "quantity") return then?.kind === "quantity" && then.si === now.si;
  if (now.kind === "word" || now.kind === "flag") return then?.kind === now.kind && then.value === now.value;
  return false;
}
