import {
  type CodeAction,
  CodeActionKind,
  type Command,
  type InitializeParams,
  type Position,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { applied } from "../edits/change.js";
import type { Edit, RefactoringKind } from "../refactor/refactoring.js";
import { refactoringsAt } from "../refactor/refactorings.js";
import { tidied } from "../refactor/tidied.js";
import type { Editor } from "./editor.js";

/** Kinds of refactorings that are offered, for the client to know. */
export const refactorKinds: readonly RefactoringKind[] = [
  CodeActionKind.RefactorExtract,
  CodeActionKind.RefactorRewrite,
  "refactor.move",
] as RefactoringKind[];

/** Notes what the client can do with a refactoring. */
export function noteRefactoring(editor: Editor, { capabilities, initializationOptions }: InitializeParams): void {
  const edits = capabilities.workspace?.workspaceEdit;
  editor.asksForEdits =
    capabilities.textDocument?.codeAction?.dataSupport === true &&
    capabilities.textDocument.codeAction.resolveSupport?.properties.includes("edit") === true;
  editor.makesFiles = edits?.documentChanges === true && edits.resourceOperations?.includes("create") === true;
  const { renameCommand } = (initializationOptions ?? {}) as { readonly renameCommand?: unknown };
  editor.renameCommand = typeof renameCommand === "string" ? renameCommand : undefined;
}

/** Where a refactoring was asked for: enough to find it again when it is chosen. */
interface Place {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
}

/** Refactorings as code actions, of those kinds that somebody wants. Their edits come later to those who ask for them. */
export function refactorActions(editor: Editor, place: Place, isWanted: (kind: string) => boolean): CodeAction[] {
  const found = refactoringsAt(editor.view, place.uri, place.start, place.end, {
    isWanted,
    canCreate: editor.makesFiles,
  });
  return found.map((refactoring) => {
    const { title, kind } = refactoring;
    return editor.asksForEdits ? { title, kind, data: place } : withEdit(editor, { title, kind }, refactoring);
  });
}

/** The action with what it does, as the text is by now; without where it can no longer be done. */
export function resolveRefactoring(editor: Editor, action: CodeAction): CodeAction {
  const { uri, start, end } = (action.data ?? {}) as Partial<Place>;
  if (uri === undefined || start === undefined || end === undefined) return action;
  const wanted = { isWanted: (kind: string) => kind === action.kind, canCreate: editor.makesFiles };
  const found = refactoringsAt(editor.view, uri, start, end, wanted).find(({ title }) => title === action.title);
  return found ? withEdit(editor, action, found) : action;
}

function withEdit(editor: Editor, action: CodeAction, found: Edit): CodeAction {
  const edit = tidied(editor.view, found);
  const command = naming(editor, edit);
  return {
    ...action,
    edit: workspaceEdit(edit, editor.positions.edits(edit.changes)),
    ...(command ? { command } : {}),
  };
}

function workspaceEdit({ creates }: Edit, changes: NonNullable<WorkspaceEdit["changes"]>): WorkspaceEdit {
  if (!creates) return { changes };
  const top: Position = { line: 0, character: 0 };
  const filled: TextDocumentEdit = {
    textDocument: { uri: creates.uri, version: null },
    edits: [{ range: { start: top, end: top }, newText: creates.text }],
  };
  const others = Object.entries(changes).map(
    ([uri, edits]): TextDocumentEdit => ({ textDocument: { uri, version: null }, edits }),
  );
  return {
    documentChanges: [
      { kind: "create", uri: creates.uri, options: { overwrite: false, ignoreIfExists: false } },
      filled,
      ...others,
    ],
  };
}

/** The place of a name that waits for a better one is that in the text as it then is. */
function naming(editor: Editor, { naming, changes }: Edit): Command | undefined {
  if (!naming || editor.renameCommand === undefined) return undefined;
  const { uri, start } = naming;
  const text = applied(
    editor.view.sources.text(uri) ?? "",
    changes.filter((change) => change.uri === uri),
  );
  const before = text.slice(0, start).split(/\r\n|\r|\n/);
  const position: Position = { line: before.length - 1, character: before[before.length - 1]!.length };
  return {
    title: "Rename",
    command: editor.renameCommand,
    arguments: [editor.positions.spelled(uri), position],
  };
}
