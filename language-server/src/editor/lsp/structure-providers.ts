import type { LangiumDocument } from "langium";
import type { CallHierarchyProvider, DocumentLinkProvider, SemanticTokenProvider } from "langium/lsp";
import {
  type CallHierarchyIncomingCall,
  type CallHierarchyIncomingCallsParams,
  type CallHierarchyItem,
  type CallHierarchyOutgoingCall,
  type CallHierarchyOutgoingCallsParams,
  type CallHierarchyPrepareParams,
  type DocumentLink,
  type SelectionRange,
  type SelectionRangeParams,
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensOptions,
  type SemanticTokensRangeParams,
} from "vscode-languageserver";
import { linksOf } from "../links.js";
import { selectionsAt } from "../selection.js";
import { colouredIn, tokenSorts } from "../structure/coloured.js";
import { fedFrom, feeds, type HierarchyEntry, hierarchyAt } from "../structure/hierarchy.js";
import type { Editor } from "./editor.js";
import { symbolKind } from "./symbol-kinds.js";

export class DesignLinkProvider implements DocumentLinkProvider {
  constructor(private readonly editor: Editor) {}

  getDocumentLinks(document: LangiumDocument): DocumentLink[] {
    const { view, positions } = this.editor;
    return linksOf(view, document.uri.toString()).map(({ span, to }) => ({
      range: positions.range(span),
      target: positions.spelled(to),
    }));
  }
}

/** What an entry needs to be found again. */
interface EntryData {
  readonly entry: string;
  readonly id: string;
}

/** The editor's call hierarchy, read as "fed from" and "feeds". */
export class DesignHierarchyProvider implements CallHierarchyProvider {
  constructor(private readonly editor: Editor) {}

  prepareCallHierarchy(document: LangiumDocument, { position }: CallHierarchyPrepareParams): CallHierarchyItem[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    return hierarchyAt(view, uri, positions.offset(uri, position)).map((entry) => this.item(entry));
  }

  incomingCalls({ item }: CallHierarchyIncomingCallsParams): CallHierarchyIncomingCall[] {
    const { view, positions } = this.editor;
    const { entry, id } = item.data as EntryData;
    return fedFrom(view, entry, id).map(({ to, written }) => ({
      from: this.item(to),
      fromRanges: written.map((span) => positions.range(span)),
    }));
  }

  outgoingCalls({ item }: CallHierarchyOutgoingCallsParams): CallHierarchyOutgoingCall[] {
    const { view, positions } = this.editor;
    const { entry, id } = item.data as EntryData;
    return feeds(view, entry, id).map(({ to, written }) => ({
      to: this.item(to),
      fromRanges: written.map((span) => positions.range(span)),
    }));
  }

  private item({ entry, id, detail, sort, whole, at }: HierarchyEntry): CallHierarchyItem {
    const { positions } = this.editor;
    const data: EntryData = { entry, id };
    return {
      name: id,
      detail,
      kind: symbolKind(sort),
      uri: positions.spelled(whole.uri),
      range: positions.range(whole),
      selectionRange: positions.range(at),
      data,
    };
  }
}

export class DesignTokenProvider implements SemanticTokenProvider {
  readonly tokenTypes = Object.fromEntries(tokenSorts.map((sort, index) => [sort, index]));
  readonly tokenModifiers = { declaration: 1 };
  readonly semanticTokensOptions: SemanticTokensOptions = {
    legend: { tokenTypes: [...tokenSorts], tokenModifiers: ["declaration"] },
    full: true,
    range: true,
  };

  constructor(private readonly editor: Editor) {}

  semanticHighlight(document: LangiumDocument): SemanticTokens {
    return this.tokens(document.uri.toString(), 0, Number.POSITIVE_INFINITY);
  }

  semanticHighlightRange(document: LangiumDocument, { range }: SemanticTokensRangeParams): SemanticTokens {
    const { positions } = this.editor;
    const uri = document.uri.toString();
    return this.tokens(uri, positions.offset(uri, range.start), positions.offset(uri, range.end));
  }

  /** Changes are few and whole answers cheap: no earlier answer is kept for comparison. */
  semanticHighlightDelta(document: LangiumDocument): SemanticTokens {
    return this.semanticHighlight(document);
  }

  private tokens(uri: string, start: number, end: number): SemanticTokens {
    const { view, positions } = this.editor;
    const builder = new SemanticTokensBuilder();
    for (const fragment of view.sources.fragments(uri)) {
      const chunk = fragment.chunk.start;
      if (chunk > end) break;
      for (const { from, to, sort, declares } of colouredIn(fragment)) {
        if (chunk + to < start || chunk + from > end) continue;
        const { line, character } = positions.position(uri, chunk + from);
        builder.push(line, character, to - from, this.tokenTypes[sort]!, declares ? 1 : 0);
      }
    }
    return builder.build();
  }
}

export function selectionRanges(
  editor: Editor,
  document: LangiumDocument,
  { positions: asked }: SelectionRangeParams,
): SelectionRange[] {
  const { view, positions } = editor;
  const uri = document.uri.toString();
  return asked.map((position) => {
    const spans = selectionsAt(view, uri, positions.offset(uri, position));
    let range: SelectionRange | undefined;
    for (const span of spans.reverse()) range = { range: positions.range(span), ...(range && { parent: range }) };
    return range ?? { range: { start: position, end: position } };
  });
}
