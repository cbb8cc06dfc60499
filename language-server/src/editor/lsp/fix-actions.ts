import { type CodeAction, CodeActionKind, type Diagnostic } from "vscode-languageserver";
import { type Action, actionsAt } from "../actions.js";
import { type AskedAt, askedAt, offered, withEdit } from "./action-edits.js";
import type { Editor } from "./editor.js";

/** One of the fixes at a place: two designs may ask for the same in the same words. */
interface AskedFix extends AskedAt {
  readonly number: number;
}

/** What can be done about what is marked in a stretch, as code actions that name the marks they answer. */
export function fixActions(editor: Editor, asked: AskedAt, shown: readonly Diagnostic[]): CodeAction[] {
  return actionsAt(editor.view, asked.uri, asked.start, asked.end).map((action, number) => {
    const ask: AskedFix = { ...asked, number };
    return offered(editor, codeAction(editor, asked.uri, action, shown), action, ask);
  });
}

/** The fix with its edit; without where there is no such fix any more. */
export function resolveFix(editor: Editor, action: CodeAction): CodeAction {
  const asked = askedAt(action);
  if (!asked) return action;
  const found = actionsAt(editor.view, asked.uri, asked.start, asked.end)[(action.data as AskedFix).number];
  return found?.title === action.title ? withEdit(editor, action, found) : action;
}

function codeAction(
  { positions }: Editor,
  uri: string,
  { title, answers, preferred }: Action,
  shown: readonly Diagnostic[],
): CodeAction {
  const answered = shown.filter(
    ({ code, range }) => code === answers.id && positions.offset(uri, range.start) === answers.start,
  );
  return {
    title,
    kind: CodeActionKind.QuickFix,
    ...(answered.length > 0 ? { diagnostics: answered } : {}),
    ...(preferred ? { isPreferred: true } : {}),
  };
}
