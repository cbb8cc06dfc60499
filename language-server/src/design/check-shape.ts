import { type Dimension, dimensions, unitsOf } from "@sunwright/grammar";
import type { Place } from "../place.js";
import type { Problem, Quantity, Value } from "./model.js";
import type { Shape } from "./schema/index.js";
import { nearest } from "./suggest.js";

/** Holds a value against the shape its property wants. `subject` begins the sentence, `typical` shows how it is written. */
export function* checkShape(
  shape: Shape,
  value: Value,
  place: Place,
  subject: string,
  typical?: string,
): Generator<Problem> {
  const example = typical ? `, for example ${typical}` : "";
  const wrong = (wanted: string): Problem => ({
    id: "wrong-value",
    severity: "error",
    message: `${subject} is ${wanted}${example}; this is ${describe(value)}.`,
    place,
  });
  switch (shape.is) {
    case "quantity":
      if (value.kind === "quantity") yield* checkDimension(value, shape.dimensions, place, subject, example);
      else yield wrong(aQuantity(shape.dimensions));
      break;
    case "range":
      if (value.kind !== "range") {
        yield wrong(`a range of ${titles(shape.dimensions)}`);
        break;
      }
      yield* checkRange(value.low, value.high, shape.dimensions, place, subject, example);
      break;
    case "count":
      if (value.kind !== "quantity") yield wrong("a whole number");
      else if (value.dimension !== "number") yield { ...wrong("a whole number without a unit"), id: "wrong-dimension" };
      else if (!Number.isInteger(value.si) || value.si < 0) yield wrong("a whole number, 0 or more");
      break;
    case "flag":
      if (value.kind !== "flag") yield wrong("yes or no");
      break;
    case "words":
      if (value.kind !== "word") yield wrong(`one of ${shape.words.join(", ")}`);
      else if (!shape.words.includes(value.value)) yield unknownWord(value.value, shape.words, place, subject);
      break;
    case "text":
      if (value.kind !== "text") yield wrong('a text between quotation marks ("…")');
      break;
    case "day":
      if (value.kind !== "day") yield wrong("a day written as 2026-06-12");
      break;
    case "mention":
      if (value.kind !== "word") yield wrong(`the name of a ${shape.kinds.join(" or ")}`);
      break;
    case "list":
      if (value.kind !== "list") yield wrong("a list, [ … ]");
      else for (const inner of value.values) yield* checkShape(shape.of, inner, place, subject, typical);
      break;
  }
}

function* checkRange(
  low: Quantity,
  high: Quantity,
  wanted: readonly Dimension[],
  place: Place,
  subject: string,
  example: string,
): Generator<Problem> {
  yield* checkDimension(high, wanted, place, subject, example);
  // `80..550 V` gives both ends the unit of the second; a first end with a unit of its own must agree.
  if (low.unit !== "" && low.dimension !== high.dimension)
    yield* checkDimension(low, [high.dimension], place, subject, example);
  else if (low.si > high.si)
    yield {
      id: "wrong-value",
      severity: "error",
      message: `${subject} runs from ${low.written} down to ${high.written}; a range is written from low to high.`,
      place,
    };
}

function* checkDimension(
  value: Quantity,
  wanted: readonly Dimension[],
  place: Place,
  subject: string,
  example: string,
): Generator<Problem> {
  if (wanted.includes(value.dimension)) return;
  if (value.unit === "") {
    yield {
      id: "missing-unit",
      severity: "error",
      message: `${subject} is ${aQuantity(wanted)} and needs its unit${example}.`,
      place,
      suggestions: usualUnits(wanted).map((name) => ({
        title: `Write ${value.written} ${name}`,
        text: `${value.written} ${name}`,
      })),
    };
    return;
  }
  yield {
    id: "wrong-dimension",
    severity: "error",
    message: `${subject} is ${aQuantity(wanted)}${example}; ${value.written} ${value.unit} is ${article(dimensions[value.dimension].title)}.`,
    place,
  };
}

function usualUnits(wanted: readonly Dimension[]): string[] {
  return wanted.flatMap((dimension) => unitsOf(dimension).map((unit) => unit.name)).slice(0, 3);
}

function unknownWord(word: string, known: readonly string[], place: Place, subject: string): Problem {
  const near = nearest(word, known);
  return {
    id: "unknown-word",
    severity: "error",
    message: `${subject} cannot be ${word}.${near ? ` Did you mean ${near}?` : ""} It is one of ${known.join(", ")}.`,
    place,
    suggestions: near ? [{ title: `Change to ${near}`, text: near }] : [],
  };
}

function titles(wanted: readonly Dimension[]): string {
  return wanted.map((dimension) => dimensions[dimension].title).join(" or ");
}
function aQuantity(wanted: readonly Dimension[]): string {
  return article(titles(wanted));
}
function article(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;
}

function describe(value: Value): string {
  switch (value.kind) {
    case "quantity":
      return `${value.written} ${value.unit}`.trim();
    case "range":
      return "a range";
    case "list":
      return "a list";
    case "flag":
      return value.value ? "yes" : "no";
    case "word":
      return `the word ${value.value}`;
    case "text":
      return "a text";
    case "day":
      return "a day";
  }
}
