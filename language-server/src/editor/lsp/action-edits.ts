import * as l10n from "@vscode/l10n";
import type {
  CodeAction,
  Command,
  InitializeParams,
  Position,
  TextDocumentEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { applied, type Edit } from "../edits/change.js";
import { tidied } from "../edits/tidied.js";
import type { Editor } from "./editor.js";

/** Where actions were asked for: enough to find one again when it is chosen. */
export interface AskedAt {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
}

/** Notes what the client can do with actions. */
export function noteActions(editor: Editor, { capabilities, initializationOptions }: InitializeParams): void {
  const edits = capabilities.workspace?.workspaceEdit;
  editor.asksForEdits =
    capabilities.textDocument?.codeAction?.dataSupport === true &&
    capabilities.textDocument.codeAction.resolveSupport?.properties.includes("edit") === true;
  editor.makesFiles = edits?.documentChanges === true && edits.resourceOperations?.includes("create") === true;
  const { renameCommand } = (initializationOptions ?? {}) as { readonly renameCommand?: unknown };
  editor.renameCommand = typeof renameCommand === "string" ? renameCommand : undefined;
}

/**
 * The action as it is offered. What it does is worked out once it is chosen, where the client asks then: only the text
 * afterwards shows how it has to be laid out.
 */
export function offered(editor: Editor, action: CodeAction, edit: Edit, asked: AskedAt): CodeAction {
  return editor.asksForEdits ? { ...action, data: asked } : withEdit(editor, action, edit);
}

/** The place that an action was offered with; undefined where it already had its edit. */
export function askedAt({ data }: CodeAction): AskedAt | undefined {
  const { uri, start, end } = (data ?? {}) as Partial<AskedAt>;
  return uri === undefined || start === undefined || end === undefined ? undefined : { uri, start, end };
}

/** The action with what it does, as the text is by now. */
export function withEdit(editor: Editor, action: CodeAction, found: Edit): CodeAction {
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
    title: l10n.t("Rename"),
    command: editor.renameCommand,
    arguments: [editor.positions.spelled(uri), position],
  };
}
