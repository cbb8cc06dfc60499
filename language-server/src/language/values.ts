import { type ParsedQuantity, parseQuantity } from "@sunwright/grammar";
import type {
  DayValue,
  ListValue,
  Mention as MentionNode,
  QuantityValue,
  Value as ValueNode,
} from "@sunwright/grammar/ast";
import type { Mention, Problem, Quantity, Value } from "../design/model.js";
import type { Place } from "../place.js";
import type { Places } from "./places.js";

/** Reads values of one chunk; what cannot be read is left out and said in `problems`. */
export class ValueReader {
  readonly problems: Problem[] = [];

  constructor(private readonly places: Places) {}

  value(node: ValueNode): Value | undefined {
    switch (node.$type) {
      case "QuantityValue":
        return this.quantityOrRange(node);
      case "ListValue":
        return this.list(node);
      case "FlagValue":
        return { kind: "flag", value: node.flag === "yes" };
      case "DayValue":
        return this.day(node);
      case "TextValue":
        return { kind: "text", value: node.text ?? "" };
      case "WordValue":
        return node.word?.path?.length ? { kind: "word", value: node.word.path.join(".") } : undefined;
      default:
        return undefined;
    }
  }

  mention(node: MentionNode | undefined): Mention | undefined {
    if (!node?.path?.length || !node.$cstNode) return undefined;
    return { path: node.path, place: this.places.whole(node), places: this.places.properties(node, "path") };
  }

  /** A quantity that stands by itself, such as the length of a run. */
  quantity(text: string | undefined, place: Place | undefined): Quantity | undefined {
    if (text === undefined || !place) return undefined;
    return asQuantity(this.parsed(text, place));
  }

  /** A whole number of 1 or more: a count, or the number of a way. */
  whole(text: string | undefined, place: Place | undefined, what: string): { value: number; place: Place } | undefined {
    if (text === undefined || !place) return undefined;
    const parsed = this.parsed(text, place);
    if (parsed.problems.length > 0) return undefined;
    if (parsed.unit === "" && Number.isSafeInteger(parsed.written) && parsed.written >= 1) {
      return { value: parsed.written, place };
    }
    this.problems.push({
      id: "wrong-count",
      severity: "error",
      message: `${text} is no ${what}: things are counted in whole numbers from 1. Write a whole number without a unit.`,
      place,
    });
    return undefined;
  }

  private quantityOrRange(node: QuantityValue): Value | undefined {
    const lowPlace = this.places.property(node, "low");
    if (node.high === undefined) return this.quantity(node.low, lowPlace);
    const high = this.quantity(node.high, this.places.property(node, "high"));
    if (node.low === undefined || !lowPlace) return undefined;
    // `80..550 V`: the unit is written once, behind the range.
    const parsed = this.parsed(node.low, lowPlace);
    const shared = parsed.unit === "" && high ? high.unit : "";
    const low = asQuantity(shared === "" ? parsed : parseQuantity(`${node.low} ${shared}`));
    return low && high ? { kind: "range", low, high } : undefined;
  }

  private list(node: ListValue): Value | undefined {
    const values = (node.values ?? []).map((value) => this.value(value));
    return values.every((value) => value !== undefined) ? { kind: "list", values } : undefined;
  }

  private day(node: DayValue): Value | undefined {
    const place = this.places.whole(node);
    return this.calendarDay(node.day, place) === undefined ? undefined : { kind: "day", value: node.day };
  }

  calendarDay(text: string | undefined, place: Place | undefined): string | undefined {
    if (text === undefined || !place) return undefined;
    const time = Date.parse(`${text}T00:00:00Z`);
    if (!Number.isNaN(time) && new Date(time).toISOString().startsWith(text)) return text;
    this.problems.push({
      id: "impossible-value",
      severity: "error",
      message: `${text} is not a day of the calendar. Write year, month and day, such as 2026-06-12.`,
      place,
    });
    return undefined;
  }

  private parsed(text: string, place: Place): ParsedQuantity {
    const parsed = parseQuantity(text);
    for (const problem of parsed.problems) {
      // A correction replaces the whole quantity; the squiggle is wide enough for it only where it has one.
      const whole = problem.suggestions.length > 0;
      const at = whole ? place : { ...place, from: place.from + problem.from, to: place.from + problem.to };
      const { id, message, suggestions } = problem;
      this.problems.push({ id, severity: "error", message, place: at, suggestions });
    }
    return parsed;
  }
}

function asQuantity(parsed: ParsedQuantity): Quantity | undefined {
  const { si, dimension, written, unit } = parsed;
  return dimension === undefined || Number.isNaN(si) ? undefined : { kind: "quantity", si, dimension, written, unit };
}
