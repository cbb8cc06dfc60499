import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { label } from "../../language-server/src/design/facts.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { placeholder } from "../../language-server/src/editor/edits/placeholder.js";
import { tidied } from "../../language-server/src/editor/edits/tidied.js";
import type { Refactoring } from "../../language-server/src/editor/refactor/refactoring.js";
import { refactoringsAt } from "../../language-server/src/editor/refactor/refactorings.js";
import { type TestWorkspace, uriOf } from "./workspace.js";

/** Refactorings of what stands at the first of some words of a file. */
export function refactorings(workspace: TestWorkspace, name: string, words: string, canCreate = true): Refactoring[] {
  const start = workspace.text(uriOf(name))?.indexOf(words) ?? -1;
  if (start < 0) throw new Error(`"${words}" is not in ${name}`);
  const wanted = { isWanted: () => true, canCreate };
  return refactoringsAt(workspace.view, uriOf(name), start, start, wanted);
}

/** The files after an edit as the editor gets it, by address; only those that it touches. */
export function textsAfter(workspace: TestWorkspace, refactoring: Refactoring): Map<string, string> {
  return changedTexts(workspace, tidied(workspace.view, refactoring));
}

/** The same before the formatter looked at it. */
export function changedTexts(workspace: TestWorkspace, { changes, creates }: Refactoring): Map<string, string> {
  const texts = new Map<string, string>();
  if (creates) texts.set(creates.uri, creates.text);
  for (const uri of new Set(changes.map((change) => change.uri)))
    texts.set(
      uri,
      applied(
        workspace.text(uri) ?? "",
        changes.filter((change) => change.uri === uri),
      ),
    );
  return texts;
}

/** What was found about each thing, in a form that can be compared with that of another version of the text. */
export function outcomes({ checks }: Assessment): string[] {
  return checks
    .map(({ rule, thing, outcome }) => {
      const share = outcome.outcome === "pass" ? ` ${outcome.utilisation?.toPrecision(9) ?? ""}` : "";
      const missing =
        outcome.outcome === "not-checked" ? ` ${outcome.missing.map(({ property }) => property).join(" ")}` : "";
      return `${rule.id} on ${label(thing)}: ${outcome.outcome}${share}${missing}`;
    })
    .sort();
}

/** Errors of the text; a figure that is to be filled in is one on purpose. */
export function errors({ problems }: Assessment): string[] {
  return problems
    .filter(({ severity, message }) => severity === "error" && !message.includes(placeholder))
    .map(({ id, message }) => `${id}: ${message}`)
    .sort();
}
