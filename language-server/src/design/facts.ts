import { parseQuantity } from "@sunwright/grammar";
import type { Given, Origin } from "../physics/figure.js";
import type { Place } from "../place.js";
import type { Quantity, Value } from "./model.js";
import { isPossible } from "./possible.js";
import { type PropertyRow, propertyRow } from "./schema/index.js";
import { findProperty, lacksPart, type Thing } from "./things.js";

/** What is known of one property of one thing, and from where. */
export interface Fact {
  readonly value: Value;
  readonly origin: Origin;
}

/**
 * The nearest statement of a property: on the item, on its part, or the schema's assumption with its reason.
 * Undefined where nothing is known: the check that needs it is then "not checked".
 */
export function fact(thing: Thing, name: string): Fact | undefined {
  const found = findProperty(thing, name);
  if (found) {
    if (!found.property.value) return undefined;
    const { value, valuePlace, statedBy, whatIf } = found.property;
    const by = statedBy ? `, from ${statedBy}` : "";
    return { value, origin: statedOrigin(`${found.label}, ${name}${by}`, valuePlace, whatIf) };
  }
  const row = thing.row && propertyRow(thing.row, name);
  if (!row?.assumed) return undefined;
  return {
    value: assumedValue(row),
    origin: { kind: "assumed", text: `${label(thing)}, ${name}: ${row.assumed.text}, because ${row.assumed.reason}` },
  };
}

/** The origin of what the text states, or of what somebody supposes that it stated. */
export function statedOrigin(text: string, place?: Place, whatIf?: true): Origin {
  if (!whatIf) return { kind: "stated", text, place };
  return { kind: "stated", text: `${text}, what if`, place, whatIf };
}

/**
 * A quantity as a figure of the physics; undefined when it is not known, not a quantity, or one that the property
 * cannot have (600 A for a voltage): what is wrong with the text is no ground for a check to pass.
 */
export function given(thing: Thing, name: string): Given | undefined {
  const known = fact(thing, name);
  if (known?.value.kind !== "quantity" || !fits(thing, name, known.value)) return undefined;
  return toGiven(thing, name, known.value, known.origin);
}

/** Both ends of a range. */
export function givenRange(thing: Thing, name: string): { low: Given; high: Given } | undefined {
  const known = fact(thing, name);
  if (known?.value.kind !== "range") return undefined;
  const { low, high } = known.value;
  if (!fits(thing, name, low) || !fits(thing, name, high) || low.si > high.si) return undefined;
  const symbol = symbolOf(thing, name);
  return {
    low: { ...toGiven(thing, name, low, known.origin), symbol: `${symbol},min` },
    high: { ...toGiven(thing, name, high, known.origin), symbol: `${symbol},max` },
  };
}

/** A word of an enumeration, or a name; undefined for a word outside the enumeration. */
export function wordOf(thing: Thing, name: string): string | undefined {
  const known = fact(thing, name);
  if (known?.value.kind !== "word") return undefined;
  const shape = shapeOf(thing, name);
  if (shape?.is === "words" && !shape.words.includes(known.value.value)) return undefined;
  return known.value.value;
}

export function flagOf(thing: Thing, name: string): boolean | undefined {
  const known = fact(thing, name);
  return known?.value.kind === "flag" ? known.value.value : undefined;
}

export function textOf(thing: Thing, name: string): string | undefined {
  const known = fact(thing, name);
  return known?.value.kind === "text" ? known.value.value : undefined;
}

/** Whether something is stated or assumed that the property can be: `y` for yes or no says nothing yet. */
export function isKnown(thing: Thing, name: string): boolean {
  switch (shapeOf(thing, name)?.is) {
    case "quantity":
    case "count":
      return given(thing, name) !== undefined;
    case "range":
      return givenRange(thing, name) !== undefined;
    case "words":
      return wordOf(thing, name) !== undefined;
    case "flag":
      return flagOf(thing, name) !== undefined;
    case "text":
      return textOf(thing, name) !== undefined;
    default:
      return fact(thing, name) !== undefined;
  }
}

/**
 * Whether a property is written as nothing that it can be, or would stand on a sheet that does not exist. It is not
 * absent then: what is wrong with the text is no ground for a finding either.
 */
export function isMisread(thing: Thing, name: string): boolean {
  if (!findProperty(thing, name)) return lacksPart(thing);
  return !isKnown(thing, name);
}

export function label(thing: Thing): string {
  return thing.is === "part" ? thing.name : thing.id;
}

function fits(thing: Thing, name: string, quantity: Quantity): boolean {
  const row = thing.row && propertyRow(thing.row, name);
  if (!row) return Number.isFinite(quantity.si);
  const { shape } = row;
  if (shape.is === "count") return quantity.dimension === "number" && Number.isInteger(quantity.si) && quantity.si >= 0;
  if (shape.is !== "quantity" && shape.is !== "range") return false;
  return shape.dimensions.includes(quantity.dimension) && isPossible(row, quantity);
}

function shapeOf(thing: Thing, name: string): PropertyRow["shape"] | undefined {
  return thing.row && propertyRow(thing.row, name)?.shape;
}

function toGiven(thing: Thing, name: string, quantity: Quantity, origin: Origin): Given {
  return {
    kind: "given",
    symbol: symbolOf(thing, name),
    value: quantity.si,
    dimension: quantity.dimension,
    unit: quantity.unit,
    origin,
  };
}

function symbolOf(thing: Thing, name: string): string {
  return (thing.row && propertyRow(thing.row, name)?.symbol) ?? name;
}

const assumedValues = new WeakMap<PropertyRow, Value>();

function assumedValue(row: PropertyRow): Value {
  let value = assumedValues.get(row);
  if (!value) {
    value = parseAssumed(row);
    assumedValues.set(row, value);
  }
  return value;
}

function parseAssumed(row: PropertyRow): Value {
  const text = row.assumed?.text ?? "";
  switch (row.shape.is) {
    case "quantity":
    case "count": {
      const { written, unit, si, dimension } = parseQuantity(text);
      return { kind: "quantity", written, unit, si, dimension: dimension ?? "number" };
    }
    case "flag":
      return { kind: "flag", value: text === "yes" };
    case "text":
      return { kind: "text", value: text };
    default:
      return { kind: "word", value: text };
  }
}
