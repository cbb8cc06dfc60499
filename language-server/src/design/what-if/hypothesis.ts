/** Something supposed, as it was written: `S1.count = 12`. */
export interface Hypothesis {
  /** Path of the item, run or part: `["INV", "pv1"]`. */
  readonly target: readonly string[];
  /** A property of it; `count`, `part`, `length` and `cable` stand for the words of its sentence. */
  readonly property: string;
  /** As written behind the sign. */
  readonly value: string;
}

const name = "TARGET.PROPERTY = VALUE, for example S1.count = 12 or site.lowest-temperature = -15 degC";

/** Reads one hypothesis; the message says what to write where it is none. */
export function readHypothesis(text: string): Hypothesis | string {
  const sign = text.indexOf("=");
  const before = text.slice(0, Math.max(sign, 0)).trim();
  const value = text.slice(sign + 1).trim();
  const path = before.split(".").map((segment) => segment.trim());
  const property = path.pop() ?? "";
  if (sign < 0 || value === "" || property === "" || path.length === 0 || path.includes(""))
    return `${text.trim() === "" ? "Nothing" : `"${text.trim()}"`} supposes nothing. Write ${name}.`;
  return { target: path, property, value };
}

export function hypothesisText({ target, property, value }: Hypothesis): string {
  return `${[...target, property].join(".")} = ${value}`;
}
