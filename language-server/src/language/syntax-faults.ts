import { LangiumParserErrorMessageProvider, type ParseResult } from "langium";

/** The parser library's own types, as far as they show through the framework. */
export type RecognitionFault = ParseResult["parserErrors"][number];
export type Token = RecognitionFault["token"];
type TokenType = Token["tokenType"];

/** What the parser found wrong, before it is put into words. */
export type Fault =
  | { readonly is: "mismatch"; readonly expected: string; readonly rule: string }
  | { readonly is: "no-choice"; readonly rule: string; readonly ahead: readonly string[] }
  | { readonly is: "redundant" };

/**
 * Lets the parser say what it expected as data. Its messages are built in the middle of its search, where the word
 * before is not yet known for sure; the words are found afterwards, from the whole text.
 */
export class SyntaxFaults extends LangiumParserErrorMessageProvider {
  override buildMismatchTokenMessage({ expected, ruleName }: { expected: TokenType; ruleName: string }): string {
    return write(
      expected.name === "EOF"
        ? { is: "redundant" }
        : { is: "mismatch", expected: expected.name, rule: plainRule(ruleName) },
    );
  }

  override buildNotAllInputParsedMessage(): string {
    return write({ is: "redundant" });
  }

  override buildNoViableAltMessage({ actual, ruleName }: { actual: Token[]; ruleName: string }): string {
    return write({ is: "no-choice", rule: plainRule(ruleName), ahead: actual.slice(0, 3).map(({ image }) => image) });
  }

  override buildEarlyExitMessage({ actual, ruleName }: { actual: Token[]; ruleName: string }): string {
    return this.buildNoViableAltMessage({ actual, ruleName });
  }
}

function write(fault: Fault): string {
  return JSON.stringify(fault);
}

export function readFault(error: RecognitionFault): Fault {
  return JSON.parse(error.message) as Fault;
}

/** The framework marks rule names with a sign that is not seen. */
export function plainRule(ruleName: string): string {
  return ruleName.replace(/[^A-Za-z]/g, "");
}
