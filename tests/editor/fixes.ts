import { CodeAction, CodeActionKind, commands, type Range, type TextDocument, workspace } from "vscode";
import { until } from "./until";

/** So many of them are asked what they do. */
const withEdits = 30;

/** The quick fixes that are offered at a place. */
export async function fixesAt(document: TextDocument, range: Range): Promise<CodeAction[]> {
  const offered = await commands.executeCommand<(CodeAction | unknown)[]>(
    "vscode.executeCodeActionProvider",
    document.uri,
    range,
    CodeActionKind.QuickFix.value,
    withEdits,
  );
  return offered.filter((action): action is CodeAction => action instanceof CodeAction);
}

/** Waits for a quick fix and applies it. */
export async function applyFix(document: TextDocument, range: () => Range, title: RegExp): Promise<CodeAction> {
  const fix = await until(`a fix ${title} is offered`, async () =>
    (await fixesAt(document, range())).find((action) => title.test(action.title)),
  );
  if (!(await workspace.applyEdit(fix.edit!))) throw new Error(`"${fix.title}" could not be applied`);
  return fix;
}
