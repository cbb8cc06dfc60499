import { gb } from "./gb/index.js";
import { iec } from "./iec/index.js";
import type { RuleSet } from "./rule-set.js";

/** Every rule set, in the order in which pages and completion show them. */
export const ruleSets: readonly RuleSet[] = [gb, iec];

const byId = new Map(ruleSets.map((set) => [set.id, set]));

/** The rule set of `site { rules: … }`; the international one where none, or an unknown one, is named. */
export function ruleSetOf(id?: string): RuleSet {
  return (id === undefined ? undefined : byId.get(id)) ?? iec;
}
