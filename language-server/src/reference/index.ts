import { rules } from "../rules/index.js";
import { languagePage } from "./language-page.js";
import { examplePartsPage, rulePage, ruleTable } from "./rule-page.js";

export { shapeText } from "./language-page.js";
export { rulePage } from "./rule-page.js";

/** Every generated page by its path below the pages' folder. */
export function referencePages(): Map<string, string> {
  const pages = new Map<string, string>([
    ["language.md", languagePage()],
    ["rules.md", ruleTable(rules)],
    ["example-parts.md", examplePartsPage()],
  ]);
  for (const rule of rules) pages.set(`rules/${rule.id}.md`, rulePage(rule));
  return pages;
}
