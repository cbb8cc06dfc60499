import type { LangiumDocument } from "langium";
import type { HoverProvider } from "langium/lsp";
import type { Hover, HoverParams } from "vscode-languageserver";
import { hoverAt } from "../hover/hover.js";
import type { Editor } from "./editor.js";

export class DesignHoverProvider implements HoverProvider {
  constructor(private readonly editor: Editor) {}

  getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
    const { view, positions, links } = this.editor;
    const uri = document.uri.toString();
    const hover = hoverAt(view, uri, positions.offset(uri, position), links);
    return hover && { contents: { kind: "markdown", value: hover.markdown }, range: positions.range(hover.span) };
  }
}
