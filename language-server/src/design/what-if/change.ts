import type { Place } from "../../place.js";
import { checkShape } from "../check-shape.js";
import { fact } from "../facts.js";
import type { Changeable, Target } from "../find-thing.js";
import type { Property, Value } from "../model.js";
import { isPossible } from "../possible.js";
import { type PropertyRow, propertyRow } from "../schema/index.js";
import { nearest } from "../suggest.js";
import type { Thing } from "../things.js";
import { valueText } from "../value-text.js";
import type { Hypothesis } from "./hypothesis.js";
import { readValue, Unreadable } from "./read-value.js";
import { sentenceChange } from "./sentence.js";

/** One declaration with something supposed in it, and how to say so. */
export interface Change {
  /** What is supposed, for people: `−15 °C`. */
  readonly value: string;
  /** What the text says. */
  readonly written?: string;
  /** What is assumed where it says nothing. */
  readonly assumed?: string;
  /** The words in place of which it is supposed; where the text has none, the name of the thing. */
  readonly place: Place;
  readonly declaration: Changeable;
}

/** What a hypothesis makes of the declaration of its target. Throws `Unreadable` where it makes no sense there. */
export function changeOf(hypothesis: Hypothesis, target: Target): Change {
  const own = target.chain[target.chain.length - 1]!;
  return sentenceChange(hypothesis, own, nameOf(target)) ?? propertyChange(hypothesis, target, own);
}

/** Where a reader looks for something that the text does not have: the name, or the part that brings the thing. */
function nameOf({ chain }: Target): Place {
  for (const [index, outer] of chain.entries()) {
    const inner = chain[index + 1];
    if (inner?.declares !== "item" || outer.nested.includes(inner)) continue;
    return (outer.declares === "item" ? outer.part?.place : undefined) ?? outer.namePlace;
  }
  return chain[chain.length - 1]!.namePlace;
}

function propertyChange({ property: name, value: text }: Hypothesis, target: Target, own: Changeable): Change {
  const { row, thing } = target;
  const known = row && propertyRow(row, name);
  if (!known) throw new Unreadable(unknownProperty(name, target));
  const value = readValue(known, text);
  const before = own.properties.find((property) => property.name === name);
  const place = before?.valuePlace ?? nameOf(target);
  for (const { message } of checkShape(known.shape, value, place, name, known.typical)) throw new Unreadable(message);
  refuseImpossible(known, value);
  const property: Property = {
    name,
    value,
    place: before?.place ?? place,
    namePlace: before?.namePlace ?? place,
    valuePlace: place,
    whatIf: true,
  };
  const properties = [...own.properties.filter((other) => other.name !== name), property];
  return { value: valueText(value), ...asKnown(thing, before, name), place, declaration: { ...own, properties } };
}

/** What is known of a property without the hypothesis. */
function asKnown(
  thing: Thing | undefined,
  before: Property | undefined,
  name: string,
): Pick<Change, "written" | "assumed"> {
  const known = thing && fact(thing, name);
  const value = known?.value ?? before?.value;
  if (!value) return {};
  return known?.origin.kind === "assumed" ? { assumed: valueText(value) } : { written: valueText(value) };
}

function unknownProperty(name: string, { id, row, chain }: Target): string {
  const names = row?.properties.map((property) => property.name) ?? [];
  const near = nearest(name, names);
  const offer = near ? `Did you mean ${near}?` : `It has ${names.join(", ")}.`;
  return `${id} (${row?.title ?? chain[0]?.declares}) has no property ${name}. ${offer}`;
}

function refuseImpossible(row: PropertyRow, value: Value): void {
  if (row.shape.is !== "quantity" && row.shape.is !== "range") return;
  const quantities = value.kind === "range" ? [value.low, value.high] : value.kind === "quantity" ? [value] : [];
  const wanted = row.sign === "negative" ? "is negative" : "cannot be less than nothing";
  if (!quantities.every((quantity) => isPossible(row, quantity)))
    throw new Unreadable(`${row.name} ${wanted}; this is ${valueText(value)}.`);
}
