import {
  type Position,
  Selection,
  type TextDocument,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { PlaceResult } from "../../../language-server/src/editor/lsp/diagram-requests";
import { isDesign } from "../designs";

/** From what is drawn to where it is written, and back. */
export class Places {
  constructor(
    private readonly client: BaseLanguageClient,
    private readonly places: readonly PlaceResult[] = [],
  ) {}

  find(id: string): PlaceResult | undefined {
    return this.places.find((place) => place.id === id);
  }

  /** The innermost thing whose declaration holds a position. */
  at(document: TextDocument, position: Position): string | undefined {
    const uri = document.uri.toString();
    const { asRange } = this.client.protocol2CodeConverter;
    let found: { readonly id: string; readonly lines: number } | undefined;
    for (const place of this.places) {
      if (Uri.parse(place.uri).toString() !== uri) continue;
      const whole = asRange(place.whole);
      const lines = whole.end.line - whole.start.line;
      if (whole.contains(position) && (!found || lines <= found.lines)) found = { id: place.id, lines };
    }
    return found?.id;
  }

  /** Puts the cursor on the name of a thing, in the editor where its text is or would be read: not over the panel. */
  async goTo(id: string, panel: ViewColumn | undefined): Promise<void> {
    const place = this.find(id);
    if (!place) return;
    const document = await workspace.openTextDocument(Uri.parse(place.uri));
    const editor = await window.showTextDocument(document, { viewColumn: columnFor(document, panel), preview: false });
    const { start } = this.client.protocol2CodeConverter.asRange(place.name);
    editor.selection = new Selection(start, start);
    editor.revealRange(editor.selection, TextEditorRevealType.InCenterIfOutsideViewport);
  }
}

function columnFor(document: TextDocument, panel: ViewColumn | undefined): ViewColumn {
  const others = window.visibleTextEditors.filter(({ viewColumn }) => viewColumn !== undefined && viewColumn !== panel);
  const own = others.find((editor) => editor.document === document);
  const design = own ?? others.find(({ document: other }) => isDesign(other)) ?? others[0];
  if (design?.viewColumn !== undefined) return design.viewColumn;
  return panel === ViewColumn.One ? ViewColumn.Two : ViewColumn.One;
}
