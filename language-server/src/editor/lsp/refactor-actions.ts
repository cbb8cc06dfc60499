import { type CodeAction, CodeActionKind } from "vscode-languageserver";
import type { RefactoringKind } from "../refactor/refactoring.js";
import { refactoringsAt } from "../refactor/refactorings.js";
import { type AskedAt, askedAt, offered, withEdit } from "./action-edits.js";
import type { Editor } from "./editor.js";

/** Kinds of refactorings that are offered, for the client to know. */
export const refactorKinds: readonly RefactoringKind[] = [
  CodeActionKind.RefactorExtract,
  CodeActionKind.RefactorRewrite,
  "refactor.move",
] as RefactoringKind[];

/** Refactorings as code actions, of those kinds that somebody wants. */
export function refactorActions(editor: Editor, asked: AskedAt, isWanted: (kind: string) => boolean): CodeAction[] {
  const wanted = { isWanted, canCreate: editor.makesFiles };
  return refactoringsAt(editor.view, asked.uri, asked.start, asked.end, wanted).map((refactoring) =>
    offered(editor, { title: refactoring.title, kind: refactoring.kind }, refactoring, asked),
  );
}

/** The refactoring with its edit; without where it can no longer be done. */
export function resolveRefactoring(editor: Editor, action: CodeAction): CodeAction {
  const asked = askedAt(action);
  if (!asked) return action;
  const wanted = { isWanted: (kind: string) => kind === action.kind, canCreate: editor.makesFiles };
  const all = refactoringsAt(editor.view, asked.uri, asked.start, asked.end, wanted);
  const found = all.find(({ title }) => title === action.title);
  return found ? withEdit(editor, action, found) : action;
}
