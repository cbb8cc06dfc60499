import type { LangiumDocument } from "langium";
import type { DocumentSymbolProvider, FoldingRangeProvider, WorkspaceSymbolProvider } from "langium/lsp";
import {
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
  SymbolKind,
  type WorkspaceSymbol,
  type WorkspaceSymbolParams,
} from "vscode-languageserver";
import { foldsOf } from "../folding.js";
import { type OutlineEntry, type OutlineSort, outlineOf } from "../outline.js";
import { symbolsCalled } from "../workspace-symbols.js";
import type { Editor } from "./editor.js";
import { symbolKind } from "./symbol-kinds.js";

function kindOf(sort: OutlineSort): SymbolKind {
  switch (sort) {
    case "file":
      return SymbolKind.File;
    case "site":
      return SymbolKind.Namespace;
    case "part":
      return SymbolKind.Struct;
    case "reading":
      return SymbolKind.Number;
    case "departure":
      return SymbolKind.String;
    default:
      return symbolKind(sort);
  }
}

export class DesignSymbolProvider implements DocumentSymbolProvider {
  constructor(private readonly editor: Editor) {}

  getSymbols(document: LangiumDocument): DocumentSymbol[] {
    return outlineOf(this.editor.view, document.uri.toString()).map((entry) => this.symbol(entry));
  }

  private symbol({ name, detail, sort, whole, at, children }: OutlineEntry): DocumentSymbol {
    const { positions } = this.editor;
    return {
      name,
      detail,
      kind: kindOf(sort),
      range: positions.range(whole),
      selectionRange: positions.range(at),
      children: children.map((child) => this.symbol(child)),
    };
  }
}

export class DesignWorkspaceSymbolProvider implements WorkspaceSymbolProvider {
  constructor(private readonly editor: () => Editor) {}

  getSymbols({ query }: WorkspaceSymbolParams): WorkspaceSymbol[] {
    const { view, positions } = this.editor();
    return symbolsCalled(view, query).map(({ entry, container }) => ({
      name: entry.name,
      kind: kindOf(entry.sort),
      containerName: container,
      location: positions.location(entry.at),
    }));
  }
}

export class DesignFoldingProvider implements FoldingRangeProvider {
  constructor(private readonly editor: Editor) {}

  getFoldingRanges(document: LangiumDocument): FoldingRange[] {
    const { view, positions } = this.editor;
    const folds: FoldingRange[] = [];
    for (const { span, is } of foldsOf(view, document.uri.toString())) {
      const { start, end } = positions.range(span);
      // The line of the closing brace stays to be seen, that of a comment's end does not.
      const endLine = is === "block" ? end.line - 1 : end.line;
      if (endLine <= start.line) continue;
      folds.push({
        startLine: start.line,
        endLine,
        ...(is === "comment" ? { kind: FoldingRangeKind.Comment } : {}),
      });
    }
    return folds;
  }
}
