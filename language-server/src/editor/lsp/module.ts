import type { EditorModules } from "../../language/module.js";
import { DesignCodeActionProvider } from "./code-action-provider.js";
import { DesignCompletionProvider } from "./completion-provider.js";
import { DesignDiagnoser } from "./diagnoser.js";
import { editorOf } from "./editor.js";
import { DesignFormatter } from "./formatter.js";
import { DesignHintProvider, DesignLensProvider } from "./hint-provider.js";
import { DesignHoverProvider } from "./hover-provider.js";
import {
  DesignDefinitionProvider,
  DesignHighlightProvider,
  DesignReferencesProvider,
  DesignRenameProvider,
} from "./navigation-providers.js";
import { DesignSignatureProvider } from "./signature-provider.js";
import { DesignHierarchyProvider, DesignLinkProvider, DesignTokenProvider } from "./structure-providers.js";
import { DesignFoldingProvider, DesignSymbolProvider, DesignWorkspaceSymbolProvider } from "./symbol-providers.js";

/** What the editor adds to the language: one provider a request, each a thin shell over a function of plain data. */
export const editorModules: EditorModules = {
  shared: {
    lsp: { WorkspaceSymbolProvider: (shared) => new DesignWorkspaceSymbolProvider(() => editorOf(shared)) },
  },
  language: {
    lsp: {
      HoverProvider: ({ shared }) => new DesignHoverProvider(editorOf(shared)),
      CompletionProvider: ({ shared }) => new DesignCompletionProvider(editorOf(shared)),
      DocumentSymbolProvider: ({ shared }) => new DesignSymbolProvider(editorOf(shared)),
      FoldingRangeProvider: ({ shared }) => new DesignFoldingProvider(editorOf(shared)),
      DefinitionProvider: ({ shared }) => new DesignDefinitionProvider(editorOf(shared)),
      ReferencesProvider: ({ shared }) => new DesignReferencesProvider(editorOf(shared)),
      DocumentHighlightProvider: ({ shared }) => new DesignHighlightProvider(editorOf(shared)),
      RenameProvider: ({ shared }) => new DesignRenameProvider(editorOf(shared)),
      SignatureHelp: ({ shared }) => new DesignSignatureProvider(editorOf(shared)),
      DocumentLinkProvider: ({ shared }) => new DesignLinkProvider(editorOf(shared)),
      CallHierarchyProvider: ({ shared }) => new DesignHierarchyProvider(editorOf(shared)),
      SemanticTokenProvider: ({ shared }) => new DesignTokenProvider(editorOf(shared)),
      Formatter: ({ shared }) => new DesignFormatter(editorOf(shared)),
      InlayHintProvider: ({ shared }) => new DesignHintProvider(editorOf(shared)),
      CodeLensProvider: ({ shared }) => new DesignLensProvider(editorOf(shared)),
      CodeActionProvider: ({ shared }) => new DesignCodeActionProvider(editorOf(shared)),
    },
    sunwright: { Diagnoser: ({ shared }) => new DesignDiagnoser(editorOf(shared)) },
  },
};
