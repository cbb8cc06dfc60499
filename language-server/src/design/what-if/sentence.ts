import type { Place } from "../../place.js";
import type { Changeable } from "../find-thing.js";
import type { Mention, Quantity } from "../model.js";
import { valueText } from "../value-text.js";
import type { Change } from "./change.js";
import type { Hypothesis } from "./hypothesis.js";
import { readQuantity, readWord, Unreadable } from "./read-value.js";

/**
 * What is no property but a word of a sentence: count and part of `string S1 is 11 x Hollin430`, length and cable of
 * `run W1 from S1 to Q1: 18 m of Solar4`. Undefined for anything else; `name` is the place of what is not written.
 */
export function sentenceChange({ property, value }: Hypothesis, own: Changeable, name: Place): Change | undefined {
  if (own.declares === "item" && own.part && property === "count") {
    const place = own.count?.place ?? own.part.place;
    const count = { value: readCount(value), place, whatIf: true } as const;
    const written = String(own.count?.value ?? 1);
    return { value: String(count.value), written, place, declaration: { ...own, count } };
  }
  if (own.declares === "item" && property === "part") {
    const part = mention(value, own.part?.place ?? name);
    return { ...exchanged(part, own.part), declaration: { ...own, part } };
  }
  if (own.declares === "run" && property === "cable") {
    const cable = mention(value, own.cable?.place ?? name);
    return { ...exchanged(cable, own.cable), declaration: { ...own, cable } };
  }
  if (own.declares === "run" && property === "length") {
    const place = own.length?.place ?? name;
    const length = { value: readLength(value), place, whatIf: true } as const;
    const written = own.length && valueText(own.length.value);
    return { value: valueText(length.value), written, place, declaration: { ...own, length } };
  }
  return undefined;
}

function mention(value: string, place: Place): Mention {
  return { path: [readWord("part", value)], place, places: [place] };
}

function exchanged(after: Mention, before: Mention | undefined): Omit<Change, "declaration"> {
  return { value: after.path.join("."), written: before?.path.join("."), place: after.place };
}

function readCount(text: string): number {
  const { unit, written } = readQuantity("count", text);
  if (unit !== "" || !Number.isSafeInteger(written) || written < 1)
    throw new Unreadable(`A count is a whole number from 1 without a unit; this is ${text}.`);
  return written;
}

function readLength(text: string): Quantity {
  const length = readQuantity("length", text);
  if (length.unit === "") throw new Unreadable(`The length of a run needs its unit, for example ${text} m.`);
  if (length.dimension !== "length" || length.si < 0)
    throw new Unreadable(`The length of a run is a length, for example 18 m; this is ${text}.`);
  return length;
}
