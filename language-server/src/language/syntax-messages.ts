import { LangiumParserErrorMessageProvider, type ParseResult } from "langium";

/** The parser library's own types, as far as they show through the framework. */
export type RecognitionFault = ParseResult["parserErrors"][number];
type IToken = RecognitionFault["token"];
type TokenType = IToken["tokenType"];

/**
 * The parser's complaints in the words of the language: what was expected after which word, what is there instead,
 * and how the whole is written.
 */
export class SyntaxMessages extends LangiumParserErrorMessageProvider {
  /** The keyword that was expected where a token stands; lets a misspelt one be offered a correction. */
  readonly expectedKeyword = new WeakMap<IToken, string>();

  override buildMismatchTokenMessage(options: {
    expected: TokenType;
    actual: IToken;
    previous: IToken;
    ruleName: string;
  }) {
    const { expected, actual, previous, ruleName } = options;
    if (/^[a-z]+$/.test(expected.name)) this.expectedKeyword.set(actual, expected.name);
    if (expected.name === "EOF") return this.buildNotAllInputParsedMessage({ firstRedundant: actual });
    if (plainRule(ruleName) === "Body" && expected.name === "}") {
      if (previous.image === ":") return `${found(actual)} begins no value that can be read. ${form("Value")}`;
      return `This block is not closed: ${found(actual)} stands where a property, an item or \`}\` is expected. ${form("Body")}`;
    }
    return `Expected ${tokenWords(expected.name)}${after(previous)}, found ${found(actual)}. ${form(ruleName)}`;
  }

  override buildNotAllInputParsedMessage({ firstRedundant }: { firstRedundant: IToken }) {
    const image = firstRedundant.image;
    if (image === "}")
      return "This `}` closes nothing: no block is open here. Delete it, or write the `{` it belongs to.";
    if (Object.hasOwn(continues, image)) {
      return `${quoted(image)} cannot be read together with what follows it. ${form(continues[image]!)}`;
    }
    return `${quoted(image)} does not begin a declaration, so nothing is known about it. ${form("Declaration")}`;
  }

  override buildNoViableAltMessage(options: { actual: IToken[]; previous: IToken; ruleName: string }) {
    const { actual, previous, ruleName } = options;
    const first = actual[0];
    const second = actual[1];
    const rule = plainRule(ruleName);
    if (rule === "Member" && first && second && /^[\p{L}_]/u.test(first.image)) {
      return `Expected \`:\` and a value after ${quoted(first.image)}, found ${found(second)}. ${form("Body")}`;
    }
    if (rule === "Item" && actual.some((token) => token.image === ":")) {
      return `${found(first)} stands where no property can: properties are written between the braces of an item. ${form("Item")}`;
    }
    return `Expected ${ruleWords[rule] ?? "something else"}${after(previous)}, found ${found(first)}. ${form(ruleName)}`;
  }

  override buildEarlyExitMessage({
    actual,
    previous,
    ruleName,
  }: {
    actual: IToken[];
    previous: IToken;
    ruleName: string;
  }) {
    return `More is expected${after(previous)}, found ${found(actual[0])}. ${form(ruleName)}`;
  }
}

const inBraces = "Inside braces write one property a line, NAME: VALUE, or an item.";
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
  EOF: "the end of the declaration",
};

function plainRule(ruleName: string): string {
  return ruleName.replace(/[^A-Za-z]/g, "");
}

function form(ruleName: string): string {
  return forms[plainRule(ruleName)] ?? "";
}

/** How the innermost thing around an error is written, for messages of rules that have no form of their own. */
export function surroundingForm(ruleStack: readonly string[]): string {
  const rules = ruleStack.map(plainRule);
  if (forms[rules[rules.length - 1] ?? ""] !== undefined) return "";
  return forms[rules.findLast((rule) => forms[rule] !== undefined && rule !== "Declaration") ?? "Declaration"]!;
}

function tokenWords(name: string): string {
  return tokenKinds[name] ?? `\`${name}\``;
}

function after(previous: IToken | undefined): string {
  return previous?.image ? ` after ${quoted(previous.image)}` : "";
}

function found(token: IToken | undefined): string {
  return token?.image ? quoted(token.image) : "the end of the declaration";
}

/** Long or many-line words are cut, so that a message stays one line. */
function quoted(image: string): string {
  const line = image.replace(/\s+/g, " ");
  return `\`${line.length > 40 ? `${line.slice(0, 39)}…` : line}\``;
}
