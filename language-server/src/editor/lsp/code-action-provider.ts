import type { LangiumDocument } from "langium";
import type { CodeActionProvider } from "langium/lsp";
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  type TextEdit,
} from "vscode-languageserver";
import { type Action, actionsAt } from "../actions.js";
import type { Editor } from "./editor.js";

export class DesignCodeActionProvider implements CodeActionProvider {
  constructor(private readonly editor: Editor) {}

  getCodeActions(document: LangiumDocument, { range, context }: CodeActionParams): CodeAction[] {
    if (context.only && !context.only.some((kind) => isQuickFix(kind))) return [];
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const actions = actionsAt(view, uri, positions.offset(uri, range.start), positions.offset(uri, range.end));
    return actions.map((action) => this.codeAction(uri, action, context.diagnostics));
  }

  private codeAction(uri: string, { title, changes, answers, preferred }: Action, shown: Diagnostic[]): CodeAction {
    const { positions } = this.editor;
    const edits: Record<string, TextEdit[]> = {};
    for (const change of changes) {
      const { uri: file, range } = positions.location(change);
      edits[file] ??= [];
      edits[file].push({ range, newText: change.text });
    }
    const answered = shown.filter(
      ({ code, range }) => code === answers.id && positions.offset(uri, range.start) === answers.start,
    );
    return {
      title,
      kind: CodeActionKind.QuickFix,
      ...(answered.length > 0 ? { diagnostics: answered } : {}),
      ...(preferred ? { isPreferred: true } : {}),
      edit: { changes: edits },
    };
  }
}

function isQuickFix(kind: string): boolean {
  return kind === CodeActionKind.Empty || kind === CodeActionKind.QuickFix || kind.startsWith("quickfix.");
}
