import type { LangiumDocument } from "langium";
import type { DefinitionProvider, DocumentHighlightProvider, ReferencesProvider, RenameProvider } from "langium/lsp";
import {
  type DefinitionParams,
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentHighlightParams,
  type Location,
  type LocationLink,
  LSPErrorCodes,
  type Range,
  type ReferenceParams,
  type RenameParams,
  ResponseError,
  type TextDocumentPositionParams,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { definitionAt, highlightsAt, referencesAt } from "../navigate.js";
import { renameAt, renameableAt } from "../rename.js";
import type { Editor } from "./editor.js";

const fileStart: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

export class DesignDefinitionProvider implements DefinitionProvider {
  constructor(private readonly editor: Editor) {}

  getDefinition(document: LangiumDocument, { position }: DefinitionParams): LocationLink[] | undefined {
    const { view, positions, settings } = this.editor;
    const uri = document.uri.toString();
    const definition = definitionAt(view, uri, positions.offset(uri, position), settings.docs);
    if (!definition) return undefined;
    const originSelectionRange = positions.range(definition.from);
    if (definition.goes === "to-file")
      return [
        {
          originSelectionRange,
          targetUri: positions.spelled(definition.uri),
          targetRange: fileStart,
          targetSelectionRange: fileStart,
        },
      ];
    return [
      {
        originSelectionRange,
        targetUri: positions.spelled(definition.to.uri),
        targetRange: positions.range(definition.whole),
        targetSelectionRange: positions.range(definition.to),
      },
    ];
  }
}

export class DesignReferencesProvider implements ReferencesProvider {
  constructor(private readonly editor: Editor) {}

  findReferences(document: LangiumDocument, { position, context }: ReferenceParams): Location[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const spans = referencesAt(view, uri, positions.offset(uri, position), context.includeDeclaration);
    return spans.map((span) => positions.location(span));
  }
}

export class DesignHighlightProvider implements DocumentHighlightProvider {
  constructor(private readonly editor: Editor) {}

  getDocumentHighlight(document: LangiumDocument, { position }: DocumentHighlightParams): DocumentHighlight[] {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    return highlightsAt(view, uri, positions.offset(uri, position)).map(({ span, declares }) => ({
      range: positions.range(span),
      kind: declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
  }
}

export class DesignRenameProvider implements RenameProvider {
  constructor(private readonly editor: Editor) {}

  rename(document: LangiumDocument, { position, newName }: RenameParams): WorkspaceEdit {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const renamed = renameAt(view, uri, positions.offset(uri, position), newName);
    if ("refused" in renamed) throw refusal(renamed.refused);
    const changes: Record<string, TextEdit[]> = {};
    for (const span of renamed.edits) {
      const { uri: file, range } = positions.location(span);
      changes[file] ??= [];
      changes[file].push({ range, newText: newName });
    }
    return { changes };
  }

  prepareRename(document: LangiumDocument, { position }: TextDocumentPositionParams): Range {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const renameable = renameableAt(view, uri, positions.offset(uri, position));
    if ("refused" in renameable) throw refusal(renameable.refused);
    return positions.range(renameable.span);
  }
}

/** The editor shows the message of a failed request to the person who asked. */
function refusal(message: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, message);
}
