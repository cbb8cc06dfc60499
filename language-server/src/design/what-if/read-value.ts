import { nameSource, parseQuantity } from "@sunwright/grammar";
import type { Quantity, Value } from "../model.js";
import type { PropertyRow, Shape } from "../schema/index.js";

/** Why something cannot be supposed: a whole sentence. */
export class Unreadable extends Error {}

/**
 * Reads a value that is written outside a file, where no grammar tells a word from a text: the shape that its property
 * wants decides. Throws `Unreadable`; whether the value fits the shape in all else is for `checkShape` to say.
 */
export function readValue({ name, shape }: Pick<PropertyRow, "name" | "shape">, text: string): Value {
  const trimmed = text.trim();
  switch (shape.is) {
    case "quantity":
    case "count":
      return readQuantity(name, trimmed);
    case "range":
      return readRange(name, trimmed);
    case "flag":
      if (trimmed !== "yes" && trimmed !== "no")
        throw new Unreadable(`${name} is yes or no; this is ${shown(trimmed)}.`);
      return { kind: "flag", value: trimmed === "yes" };
    case "text":
      return { kind: "text", value: /^"[^"]*"$/.test(trimmed) ? trimmed.slice(1, -1) : trimmed };
    case "day":
      return { kind: "day", value: readDay(name, trimmed) };
    case "words":
    case "mention":
      return { kind: "word", value: readWord(name, trimmed) };
    case "list":
      return readList(name, shape.of, trimmed);
  }
}

/** A number with its unit; what is wrong with it is said in the words of the language's own reader. */
export function readQuantity(name: string, text: string): Quantity {
  const { si, dimension, written, unit, problems } = parseQuantity(text);
  const [problem] = problems;
  if (problem) throw new Unreadable(`${name} cannot be ${text}: ${problem.message}`);
  if (dimension === undefined || Number.isNaN(si)) throw new Unreadable(`${name} is a number; this is ${shown(text)}.`);
  return { kind: "quantity", si, dimension, written, unit };
}

const mention = new RegExp(`^${nameSource}(?:\\.${nameSource})*$`);

export function readWord(name: string, text: string): string {
  if (!mention.test(text)) throw new Unreadable(`${name} is a word; this is ${shown(text)}.`);
  return text;
}

/** `80..550 V`: the unit is written once, behind the range. */
function readRange(name: string, text: string): Value {
  const [low, high, ...more] = text.split("..").map((end) => end.trim());
  if (!low || !high || more.length > 0)
    throw new Unreadable(`${name} is a range, as in 80..550 V; this is ${shown(text)}.`);
  const upper = readQuantity(name, high);
  const lower = readQuantity(name, low);
  const shared = lower.unit === "" && upper.unit !== "" ? readQuantity(name, `${low} ${upper.unit}`) : lower;
  return { kind: "range", low: shared, high: upper };
}

function readDay(name: string, text: string): string {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(time) || !new Date(time).toISOString().startsWith(text))
    throw new Unreadable(`${name} is a day such as 2026-06-12; this is ${shown(text)}.`);
  return text;
}

function readList(name: string, of: Shape, text: string): Value {
  const inner = text.replace(/^\[(.*)\]$/s, "$1").trim();
  const values = inner === "" ? [] : inner.split(",").map((each) => readValue({ name, shape: of }, each));
  return { kind: "list", values };
}

function shown(text: string): string {
  return text === "" ? "nothing" : text;
}
