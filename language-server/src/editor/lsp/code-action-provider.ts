import * as l10n from "@vscode/l10n";
import { DocumentState, type LangiumDocument } from "langium";
import { type CodeActionProvider, createServerRequestHandler } from "langium/lsp";
import { type CodeAction, CodeActionKind, type CodeActionParams, type Connection } from "vscode-languageserver";
import { safeChanges } from "../fix-all.js";
import { askedAt } from "./action-edits.js";
import type { Editor } from "./editor.js";
import { fixActions, resolveFix } from "./fix-actions.js";
import type { About } from "./questions.js";
import { refactorActions, resolveRefactoring } from "./refactor-actions.js";

/** Corrections on saving, for those who switch them on. */
export const fixAll = "source.fixAll.sunwright";

export class DesignCodeActionProvider implements CodeActionProvider {
  constructor(private readonly editor: Editor) {}

  getCodeActions(document: LangiumDocument, { range, context }: CodeActionParams): CodeAction[] {
    const { positions } = this.editor;
    const uri = document.uri.toString();
    const { only } = context;
    const asked = { uri, start: positions.offset(uri, range.start), end: positions.offset(uri, range.end) };
    const all = only?.some((kind) => isWithin(fixAll, kind)) ? this.fixAll(uri) : [];
    const isWanted = (kind: string): boolean => !only || only.some((asked) => isWithin(kind, asked));
    const refactor = refactorActions(this.editor, asked, isWanted);
    const asksForFixes = !only || only.some((kind) => isWithin(CodeActionKind.QuickFix, kind) || isQuickFix(kind));
    const fixes = asksForFixes ? fixActions(this.editor, asked, context.diagnostics) : [];
    return [...fixes, ...refactor, ...all];
  }

  /** Only where it is asked for by its kind, as on saving: whoever asks what to do here wants no other lines changed. */
  private fixAll(uri: string): CodeAction[] {
    const changes = safeChanges(this.editor.view, uri);
    if (changes.length === 0) return [];
    const title =
      changes.length === 1
        ? l10n.t("Correct 1 spelling that can mean only one thing")
        : l10n.t("Correct {0} spellings that can mean only one thing", changes.length);
    return [{ title, kind: fixAll, edit: { changes: this.editor.positions.edits(changes) } }];
  }
}

interface Chosen extends About {
  readonly action: CodeAction;
}

/** Registers what is asked when an action is chosen: what it does to the text as it stands in the editor by then. */
export function addActionResolver(connection: Connection, editor: Editor): void {
  const resolve = createServerRequestHandler<Chosen, CodeAction, void>(
    (_services, _document, { action }) =>
      action.kind === CodeActionKind.QuickFix ? resolveFix(editor, action) : resolveRefactoring(editor, action),
    editor.services,
    DocumentState.IndexedReferences,
  );
  connection.onCodeActionResolve(async (action, token) => {
    const asked = askedAt(action);
    return (asked && (await resolve({ textDocument: { uri: asked.uri }, action }, token))) ?? action;
  });
}

function isQuickFix(kind: string): boolean {
  return kind.startsWith(`${CodeActionKind.QuickFix}.`);
}

/** Whether a kind is the asked one or below it: kinds are words with dots between, from the general to the special. */
function isWithin(kind: string, asked: string): boolean {
  return asked === CodeActionKind.Empty ? kind !== fixAll : kind === asked || kind.startsWith(`${asked}.`);
}
