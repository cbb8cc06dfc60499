import { gb } from "./gb/index.js";
import { iec } from "./iec/index.js";
import type { RuleSet } from "./rule-set.js";

/** Every rule set by the word of `site { rules: … }`. */
export const ruleSets: ReadonlyMap<string, RuleSet> = new Map([gb, iec].map((set) => [set.id, set]));

/** The rule set of a site; the international one where no known one is named, as the property's own assumption says. */
export function ruleSetOf(word: string | undefined): RuleSet {
  return ruleSets.get(word ?? iec.id) ?? iec;
}
