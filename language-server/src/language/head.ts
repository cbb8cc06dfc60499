/**
 * Reads declarations token by token, only as far as needed to know where one ends and the next may begin.
 *
 * It is the grammar of everything outside braces, as one table. A test compares it with the parser: cutting a valid
 * text where this says "complete" never changes what the text means.
 */

export type Token = "word" | "text" | "number" | ":" | "." | "{" | "other";

export type Head =
  | "start"
  | "use"
  | "part"
  | "part-name"
  | "part-is"
  | "run"
  | "run-name"
  | "run-from"
  | "run-start"
  | "run-to"
  | "run-end"
  | "run-length"
  | "run-unit"
  | "run-of"
  | "measured"
  | "measured-item"
  | "measured-day"
  | "departure"
  | "departure-rule"
  | "departure-on"
  | "departure-item"
  | "departure-because"
  | "expect"
  | "expect-rule"
  | "expect-on"
  | "way"
  | "way-number"
  | "way-kind"
  | "kind"
  | "name"
  | "is"
  | "count"
  | "part-wanted"
  | "item-part"
  | "serves"
  /** A mention that may be followed by a body, or by nothing. */
  | "mention"
  /** Complete but for a body that may follow. */
  | "whole"
  | "error";

interface Row {
  /** Next state by token; for words a state by its spelling, `*` for any other. */
  readonly word?: Readonly<Record<string, Head>>;
  readonly text?: Head;
  readonly number?: Head;
  readonly ":"?: Head;
  readonly body?: true;
  /** A name with dots: after a dot and a word the state is the same again. */
  readonly dotted?: true;
  readonly complete?: true;
}

const rows: Readonly<Record<Head, Row>> = {
  start: { complete: true },
  use: { text: "start" },
  part: { word: { "*": "part-name" } },
  "part-name": { word: { is: "part-is" } },
  "part-is": { word: { "*": "whole" } },
  run: { word: { "*": "run-name" } },
  "run-name": { word: { from: "run-from" } },
  "run-from": { word: { "*": "run-start" } },
  "run-start": { word: { to: "run-to" }, dotted: true },
  "run-to": { word: { "*": "run-end" } },
  "run-end": { ":": "run-length", dotted: true, body: true, complete: true },
  "run-length": { number: "run-unit" },
  // The words behind the number are its unit; the lexer knows better, here it is enough to wait for `of`.
  "run-unit": { word: { of: "run-of", "*": "run-unit" }, number: "run-unit" },
  "run-of": { word: { "*": "mention" } },
  measured: { word: { "*": "measured-item" } },
  "measured-item": { word: { on: "measured-day" }, dotted: true, body: true },
  "measured-day": { number: "whole" },
  departure: { word: { "*": "departure-rule" } },
  "departure-rule": { word: { on: "departure-on" } },
  "departure-on": { word: { "*": "departure-item" } },
  "departure-item": { word: { because: "departure-because" }, dotted: true },
  "departure-because": { text: "whole" },
  expect: { word: { "*": "expect-rule" } },
  "expect-rule": { word: { on: "expect-on" } },
  "expect-on": { word: { "*": "mention" } },
  way: { number: "way-number" },
  "way-number": { ":": "way-kind" },
  "way-kind": { word: { "*": "kind" } },
  kind: { word: { "*": "name" }, text: "whole", body: true },
  name: { word: { is: "is", serves: "serves" }, body: true, complete: true },
  is: { word: { "*": "item-part" }, number: "count" },
  count: { word: { x: "part-wanted", "×": "part-wanted", "*": "item-part" } },
  "part-wanted": { word: { "*": "item-part" } },
  "item-part": { word: { serves: "serves" }, dotted: true, body: true, complete: true },
  serves: { word: { "*": "mention" }, text: "whole" },
  mention: { dotted: true, body: true, complete: true },
  whole: { body: true, complete: true },
  error: {},
};

/** May the declaration end here? */
export function isComplete(head: Head): boolean {
  return rows[head].complete === true;
}

/** May a dot and another word follow? */
export function isDotted(head: Head): boolean {
  return rows[head].dotted === true;
}

/** The state after a token that continues the declaration; `undefined` where it cannot. `start` follows a body. */
export function continued(head: Head, token: Token, word: string): Head | undefined {
  const row = rows[head];
  switch (token) {
    case "word":
      return row.word && (Object.hasOwn(row.word, word) ? row.word[word] : row.word["*"]);
    case "text":
      return row.text;
    case "number":
      return row.number;
    case ":":
      return row[":"];
    case "{":
      return row.body ? "start" : undefined;
    default:
      return undefined;
  }
}

const beginnings: Readonly<Record<string, Head>> = {
  use: "use",
  part: "part",
  run: "run",
  measured: "measured",
  departure: "departure",
  expect: "expect",
  way: "way",
};
const never = new Set(["is", "x", "×", "serves", "from", "to", "of", "on", "because", "yes", "no"]);

/** The state after a token that begins a declaration; `error` where none begins so. */
export function begun(token: Token, word: string): Head {
  if (token !== "word" || never.has(word)) return "error";
  return Object.hasOwn(beginnings, word) ? beginnings[word]! : "kind";
}
