import type { LangiumDocument } from "langium";
import type { CodeLensProvider, InlayHintProvider } from "langium/lsp";
import type { CodeLens, InlayHint, InlayHintParams } from "vscode-languageserver";
import { hintsIn } from "../hints/hints.js";
import { lensesOf } from "../lenses/lenses.js";
import type { Editor } from "./editor.js";

export class DesignHintProvider implements InlayHintProvider {
  constructor(private readonly editor: Editor) {}

  getInlayHints(document: LangiumDocument, { range }: InlayHintParams): InlayHint[] {
    const { view, positions, settings } = this.editor;
    const uri = document.uri.toString();
    const start = positions.offset(uri, range.start);
    const end = positions.offset(uri, range.end);
    return hintsIn(view, uri, start, end, settings.hints).map(({ offset, label, tooltip }) => ({
      position: positions.position(uri, offset),
      label,
      tooltip,
      paddingLeft: true,
    }));
  }
}

export class DesignLensProvider implements CodeLensProvider {
  constructor(private readonly editor: Editor) {}

  provideCodeLens(document: LangiumDocument): CodeLens[] {
    const { view, positions, severities } = this.editor;
    return lensesOf(view, document.uri.toString(), severities).map(({ span, title }) => ({
      range: positions.range(span),
      // Without the name of a command the line is to be read, not to be pressed.
      command: { title, command: "" },
    }));
  }
}
