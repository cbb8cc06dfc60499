import type { Fault } from "./syntax-faults.js";

/**
 * Faults in the words of the language: what was expected after which word, what is there instead, and how the whole is
 * written. Words are empty where the text ends.
 */
export function syntaxMessage(fault: Fault, before: string, found: string, rules: readonly string[]): string {
  switch (fault.is) {
    case "redundant":
      return redundant(found);
    case "no-choice":
      return noChoice(fault.rule, before, found, fault.ahead[1] ?? "", rules);
    case "mismatch":
      if (fault.expected === "}") return notABlock(before, found);
      return `Expected ${tokenWords(fault.expected)}${after(before)}, found ${quoted(found)}. ${form(rules)}`;
  }
}

/** Of a line that the next one cannot be read behind. */
export function unfinishedMessage(words: readonly string[]): string {
  const [first = "", ...others] = words;
  if (others.length === 0) return `Expected \`:\` and a value after ${quoted(first)}. ${inBraces}`;
  const begins = Object.hasOwn(headForms, first) ? forms[headForms[first]!] : inBraces;
  return `This line is not finished: it stops after ${quoted(others[others.length - 1]!)}. ${begins}`;
}

const headForms: Readonly<Record<string, string>> = {
  part: "Part",
  run: "Run",
  measured: "Reading",
  departure: "Departure",
};

function redundant(found: string): string {
  if (found === "}")
    return "This `}` closes nothing: no block is open here. Delete it, or write the `{` it belongs to.";
  if (Object.hasOwn(continues, found)) {
    return `${quoted(found)} cannot be read together with what follows it. ${forms[continues[found]!]}`;
  }
  return `${quoted(found)} does not begin a declaration, so nothing is known about it. ${forms.Declaration}`;
}

function notABlock(before: string, found: string): string {
  if (before === ":") return `${quoted(found)} begins no value that can be read. ${forms.Value}`;
  return `This block is not closed: ${quoted(found)} stands where a property, an item or \`}\` is expected. ${forms.Body}`;
}

function noChoice(rule: string, before: string, found: string, next: string, rules: readonly string[]): string {
  if (rule === "Member" && /^[\p{L}_]/u.test(found)) {
    return `Expected \`:\` and a value after ${quoted(found)}, found ${quoted(next)}. ${forms.Body}`;
  }
  if (rule === "Item" && (found === ":" || next === ":")) {
    return `${quoted(found)} stands where no property can: properties are written between the braces of an item. ${forms.Item}`;
  }
  return `Expected ${ruleWords[rule] ?? "something else"}${after(before)}, found ${quoted(found)}. ${form(rules)}`;
}

export const inBraces = "Inside braces write one property a line, NAME: VALUE, or an item.";
const valueForms = "A value is a number with its unit, a word, a text in double quotes, yes, no, a day or a list.";
const forms: Readonly<Record<string, string>> = {
  Declaration:
    "A declaration begins with use, part, run, measured, departure, expect, or the kind of an item such as string.",
  Use: 'Write: use "parts/roof.sun"',
  Part: "Write: part NAME is KIND { … }",
  Item: "Write: KIND NAME is PART { … }, or KIND NAME is COUNT x PART { … }",
  Run: "Write: run NAME from TERMINAL to TERMINAL: LENGTH of CABLE",
  Reading: "Write: measured ITEM on 2026-06-12 { … }",
  Departure: 'Write: departure RULE on ITEM because "…"',
  Expectation: "Write: expect RULE on ITEM",
  Body: inBraces,
  Member: inBraces,
  Property: "Write: NAME: VALUE",
  Value: valueForms,
  WordValue: valueForms,
  ListValue: "Write a list as [VALUE, VALUE].",
  QuantityValue: "Write a range as LOW..HIGH with one unit, such as 80..550 V.",
};

/** How the innermost thing around a fault is written. */
function form(rules: readonly string[]): string {
  const inner = rules.findLast((rule) => forms[rule] !== undefined && rule !== "Declaration");
  return forms[inner ?? "Declaration"]!;
}

/** What a word in the middle of a declaration belongs to. */
const continues: Readonly<Record<string, string>> = {
  is: "Item",
  serves: "Item",
  x: "Item",
  from: "Run",
  to: "Run",
  of: "Run",
  on: "Departure",
  because: "Departure",
};

const ruleWords: Readonly<Record<string, string>> = {
  Declaration: "a declaration",
  Item: "a name, a title in double quotes or `{`",
  Member: "a property or an item",
  Value: "a value",
  Name: "a name",
  Mention: "a name",
};

const tokenKinds: Readonly<Record<string, string>> = {
  ID: "a name",
  STRING: "a text in double quotes",
  QUANTITY: "a number",
  DATE: "a day such as 2026-06-12",
};

function tokenWords(name: string): string {
  return tokenKinds[name] ?? `\`${name}\``;
}

function after(before: string): string {
  return before === "" ? "" : ` after ${quoted(before)}`;
}

/** Long or many-line words are cut, so that a message stays one line. */
function quoted(word: string): string {
  if (word === "") return "the end of the declaration";
  const line = word.replace(/\s+/g, " ");
  return `\`${line.length > 40 ? `${line.slice(0, 39)}…` : line}\``;
}
