import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from "langium";
import { stringText } from "./tokens.js";

/** Strings may still lack their closing quote; every other terminal stays the text it is. */
export class SunwrightValueConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, _node: CstNode): ValueType {
    return rule.name === "STRING" ? stringText(input) : input;
  }
}
