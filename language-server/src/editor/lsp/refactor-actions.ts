import {
  type CodeAction,
  CodeActionKind,
  type Command,
  type InitializeParams,
  type Position,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { applied, type Change } from "../edits/change.js";
import type { Edit, RefactoringKind } from "../refactor/refactoring.js";
import { refactoringsAt } from "../refactor/refactorings.js";
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
  editor.makesFiles = edits?.documentChanges === true && edits.resourceOperations?.includes("create") === true;
  const { renameCommand } = (initializationOptions ?? {}) as { readonly renameCommand?: unknown };
  editor.renameCommand = typeof renameCommand === "string" ? renameCommand : undefined;
}

/** Refactorings as code actions, of those kinds that somebody wants. */
export function refactorActions(
  editor: Editor,
  uri: string,
  start: number,
  end: number,
  isWanted: (kind: string) => boolean,
  editsOf: (changes: readonly Change[]) => NonNullable<WorkspaceEdit["changes"]>,
): CodeAction[] {
  const found = refactoringsAt(editor.view, uri, start, end, { isWanted, canCreate: editor.makesFiles });
  return found.map(({ title, kind, ...edit }) => {
    const command = naming(editor, edit);
    return { title, kind, edit: workspaceEdit(edit, editsOf(edit.changes)), ...(command ? { command } : {}) };
  });
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
