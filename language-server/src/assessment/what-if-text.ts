import type { Supposition } from "../design/what-if/overlay.js";
import type { OutcomeChange, OutcomeWord } from "./assessment.js";

/** "site.lowest-temperature = −15 °C (written: −10 °C)". */
export function suppositionText({ target, property, value, written, assumed }: Supposition): string {
  const before =
    written !== undefined ? `written: ${written}` : assumed !== undefined ? `assumed: ${assumed}` : "not stated";
  return `${target}.${property} = ${value} (${before})`;
}

const words: Readonly<Record<OutcomeWord, string>> = {
  pass: "holds",
  finding: "finding",
  departure: "departed from",
  "not-applicable": "does not apply",
  "not-checked": "not checked",
};

/** "string-voltage on S1: holds as written, finding if so". */
export function changeText({ rule, thing, asWritten, supposed }: OutcomeChange): string {
  return `${rule} on ${thing}: ${inWords(asWritten)} as written, ${inWords(supposed)} if so`;
}

function inWords([first, second]: readonly OutcomeWord[]): string {
  if (first === undefined) return "no check";
  return first === "pass" && second === "not-checked" ? "holds as far as checked" : words[first];
}
