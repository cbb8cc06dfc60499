import { problemIds } from "../assessment/problem-ids.js";
import { ruleOf } from "./rule-of.js";

/** Id of the hint that lists what could not be checked. */
export const notCheckedId = "not-checked";

/** Address of the page that explains an id, below the folder of the pages; undefined where there is none. */
export function pageOf(id: string, docs: string | undefined): string | undefined {
  if (docs === undefined || docs === "") return undefined;
  const base = docs.replace(/\/+$/, "");
  if (ruleOf(id)) return `${base}/rules/${id}.md`;
  if (problemIds.has(id)) return `${base}/language.md`;
  return id === notCheckedId ? `${base}/rules.md` : undefined;
}
