import type { LangiumDocument } from "langium";
import type { CodeActionProvider } from "langium/lsp";
import { type CodeAction, CodeActionKind, type CodeActionParams, type Diagnostic } from "vscode-languageserver";
import { type Action, actionsAt } from "../actions.js";
import { safeChanges } from "../fix-all.js";
import type { Editor } from "./editor.js";
import { refactorActions } from "./refactor-actions.js";

/** Corrections on saving, for those who switch them on. */
export const fixAll = "source.fixAll.sunwright";

export class DesignCodeActionProvider implements CodeActionProvider {
  constructor(private readonly editor: Editor) {}

  getCodeActions(document: LangiumDocument, { range, context }: CodeActionParams): CodeAction[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const { only } = context;
    const [start, end] = [positions.offset(uri, range.start), positions.offset(uri, range.end)];
    const all = only?.some((kind) => isWithin(fixAll, kind)) ? this.fixAll(uri) : [];
    const isWanted = (kind: string): boolean => !only || only.some((asked) => isWithin(kind, asked));
    const refactor = refactorActions(this.editor, { uri, start, end }, isWanted);
    const asksForFixes = !only || only.some((kind) => isWithin(CodeActionKind.QuickFix, kind) || isQuickFix(kind));
    const fixes = asksForFixes ? actionsAt(view, uri, start, end) : [];
    return [...fixes.map((action) => this.codeAction(uri, action, context.diagnostics)), ...refactor, ...all];
  }

  /** Only where it is asked for by its kind, as on saving: whoever asks what to do here wants no other lines changed. */
  private fixAll(uri: string): CodeAction[] {
    const changes = safeChanges(this.editor.view, uri);
    if (changes.length === 0) return [];
    const title = `Correct ${changes.length} ${changes.length === 1 ? "spelling" : "spellings"} that can mean only one thing`;
    return [{ title, kind: fixAll, edit: { changes: this.editor.positions.edits(changes) } }];
  }

  private codeAction(uri: string, { title, changes, answers, preferred }: Action, shown: Diagnostic[]): CodeAction {
    const { positions } = this.editor;
    const answered = shown.filter(
      ({ code, range }) => code === answers.id && positions.offset(uri, range.start) === answers.start,
    );
    return {
      title,
      kind: CodeActionKind.QuickFix,
      ...(answered.length > 0 ? { diagnostics: answered } : {}),
      ...(preferred ? { isPreferred: true } : {}),
      edit: { changes: this.editor.positions.edits(changes) },
    };
  }
}

function isQuickFix(kind: string): boolean {
  return kind.startsWith(`${CodeActionKind.QuickFix}.`);
}

/** Whether a kind is the asked one or below it: kinds are words with dots between, from the general to the special. */
function isWithin(kind: string, asked: string): boolean {
  return asked === CodeActionKind.Empty ? kind !== fixAll : kind === asked || kind.startsWith(`${asked}.`);
}
