import type { LangiumDocument } from "langium";
import type { Formatter } from "langium/lsp";
import type {
  DocumentOnTypeFormattingOptions,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  TextEdit,
} from "vscode-languageserver";
import type { FormatEdit } from "../../format/format.js";
import { formatEdits, formatEditsBehind, formatKeys } from "../formatting.js";
import type { Editor } from "./editor.js";

/** The language has one look, so nothing of the editor's own options is taken: tabs and widths are not for choice. */
export class DesignFormatter implements Formatter {
  constructor(private readonly editor: Editor) {}

  get formatOnTypeOptions(): DocumentOnTypeFormattingOptions {
    const [firstTriggerCharacter, ...moreTriggerCharacter] = formatKeys;
    return { firstTriggerCharacter, moreTriggerCharacter };
  }

  formatDocument(document: LangiumDocument): TextEdit[] {
    const uri = document.uri.toString();
    return this.textEdits(uri, formatEdits(this.editor.view, uri));
  }

  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    // Whole lines, so that the indentation of the first one counts.
    const start = positions.offset(uri, { line: range.start.line, character: 0 });
    return this.textEdits(uri, formatEdits(view, uri, { start, end: positions.offset(uri, range.end) }));
  }

  formatDocumentOnType(document: LangiumDocument, { position, ch }: DocumentOnTypeFormattingParams): TextEdit[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    return this.textEdits(uri, formatEditsBehind(view, uri, positions.offset(uri, position), ch));
  }

  private textEdits(uri: string, edits: readonly FormatEdit[]): TextEdit[] {
    return edits.map(({ start, end, text }) => ({
      range: this.editor.positions.range({ uri, start, end }),
      newText: text,
    }));
  }
}
