import { rules } from "../rules/index.js";
import type { Rule } from "../rules/rule.js";

const byId = new Map(rules.map((rule) => [rule.id, rule]));

/** A rule by its id. */
export function ruleOf(id: string): Rule | undefined {
  return byId.get(id);
}
