import { DocumentState } from "langium";
import {
  addCallHierarchyHandler,
  addCodeActionHandler,
  addCodeLensHandler,
  addCompletionHandler,
  addDocumentHighlightHandler,
  addDocumentLinkHandler,
  addDocumentSymbolHandler,
  addDocumentUpdateHandler,
  addFindReferencesHandler,
  addFoldingRangeHandler,
  addFormattingHandler,
  addGotoDefinitionHandler,
  addHoverHandler,
  addInlayHintHandler,
  addRenameHandler,
  addSemanticTokenHandler,
  addSignatureHelpHandler,
  addWorkspaceSymbolHandler,
  createServerRequestHandler,
  type DefaultSharedModuleContext,
} from "langium/lsp";
import {
  CodeActionKind,
  type Connection,
  type DidChangeConfigurationParams,
  type InitializeResult,
} from "vscode-languageserver";
import { takeWords } from "../editor/interface-words.js";
import { noteActions } from "../editor/lsp/action-edits.js";
import { ChangeTeller } from "../editor/lsp/change-teller.js";
import { addChartRequests } from "../editor/lsp/chart-requests.js";
import { addActionResolver, fixAll } from "../editor/lsp/code-action-provider.js";
import { addDesignRequests } from "../editor/lsp/design-requests.js";
import { addDiagramRequests } from "../editor/lsp/diagram-requests.js";
import { type Editor, editorOf } from "../editor/lsp/editor.js";
import { faultText } from "../editor/lsp/fault-text.js";
import { Freshener } from "../editor/lsp/freshener.js";
import { addGuidedRequests } from "../editor/lsp/guided-requests.js";
import { editorModules } from "../editor/lsp/module.js";
import { Publisher } from "../editor/lsp/publisher.js";
import { refactorKinds } from "../editor/lsp/refactor-actions.js";
import { selectionRanges } from "../editor/lsp/structure-providers.js";
import { addTextRequests } from "../editor/lsp/text-requests.js";
import { VerdictTeller } from "../editor/lsp/verdict-teller.js";
import { createSunwrightServices } from "../language/module.js";

/** The section of the user's settings that is ours. */
const section = "sunwright";

/** Those of its settings that the server asks for. */
const chosen = ["notChecked", "hints", "severity"];

/** Builds the services around a connection, registers what can be asked, and begins to listen. */
export function startServer(
  connection: Connection,
  files: Pick<DefaultSharedModuleContext, "fileSystemProvider">,
): void {
  const { shared } = createSunwrightServices({ connection, ...files }, editorModules);
  const editor = editorOf(shared);
  const publisher = new Publisher(shared, connection, editor.positions.spelled);

  addDocumentUpdateHandler(withoutSettings(connection, editor), shared);
  addCompletionHandler(connection, shared);
  addHoverHandler(connection, shared);
  addDocumentSymbolHandler(connection, shared);
  addGotoDefinitionHandler(connection, shared);
  addFindReferencesHandler(connection, shared);
  addDocumentHighlightHandler(connection, shared);
  addFoldingRangeHandler(connection, shared);
  addCodeActionHandler(connection, shared);
  addActionResolver(connection, editor);
  addRenameHandler(connection, shared);
  addWorkspaceSymbolHandler(connection, shared);
  addFormattingHandler(connection, shared);
  addDocumentLinkHandler(connection, shared);
  addCallHierarchyHandler(connection, shared);
  addSemanticTokenHandler(connection, shared);
  addSignatureHelpHandler(connection, shared);
  connection.onSelectionRanges(
    createServerRequestHandler(
      (_services, document, params) => selectionRanges(editor, document, params),
      shared,
      DocumentState.Parsed,
    ),
  );
  addInlayHintHandler(connection, shared);
  addCodeLensHandler(connection, shared);
  const freshener = new Freshener(shared, connection);
  const teller = new ChangeTeller(shared, connection, editor.positions.spelled);
  const verdicts = new VerdictTeller(connection, editor);
  const refreshAll = async (): Promise<void> => {
    await publisher.refresh();
    freshener.refresh();
    teller.tell();
    verdicts.tell();
  };
  addDesignRequests(connection, editor, refreshAll);
  addDiagramRequests(connection, editor);
  addChartRequests(connection, editor);
  addTextRequests(connection, editor);
  addGuidedRequests(connection, editor);

  const showAgain = (): void => {
    refreshAll().catch((error) => report(editor, error));
  };
  editor.onSeverities = showAgain;
  const refresh = (given: unknown): void => {
    if (editor.choose(given)) showAgain();
  };
  connection.onInitialize(async (params) => {
    takeWords(params.initializationOptions);
    editor.choose(params.initializationOptions);
    freshener.initialize(params.capabilities);
    noteActions(editor, params);
    teller.initialize(params.initializationOptions);
    editor.knowsSnippets = params.capabilities.textDocument?.completion?.completionItem?.snippetSupport === true;
    return inFull(await shared.lsp.LanguageServer.initialize(params));
  });
  connection.onInitialized((params) => {
    shared.lsp.LanguageServer.initialized(params);
    void ownSettings(editor).then(refresh, (error) => report(editor, error));
  });
  connection.onDidChangeConfiguration((change) => {
    shared.workspace.ConfigurationProvider.updateConfiguration(change);
    void changedSettings(connection, change).then(refresh, (error) => report(editor, error));
  });

  shared.workspace.TextDocuments.listen(noting(connection, (uri) => editor.spell(uri)));
  connection.listen();
}

/** What the framework does not know of, or does not tell in full. */
function inFull(result: InitializeResult): InitializeResult {
  const own: Partial<InitializeResult["capabilities"]> = {
    selectionRangeProvider: true,
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, ...refactorKinds, fixAll], resolveProvider: true },
  };
  return { ...result, capabilities: { ...result.capabilities, ...own } };
}

/** The connection, with a look at the address of each document that is opened. */
function noting(connection: Connection, note: (uri: string) => void): Connection {
  const onDidOpenTextDocument: Connection["onDidOpenTextDocument"] = (handler) =>
    connection.onDidOpenTextDocument((params) => {
      note(params.textDocument.uri);
      return handler(params);
    });
  return Object.create(connection, { onDidOpenTextDocument: { value: onDidOpenTextDocument } });
}

/** The connection as whoever builds documents sees it: a settings file that changes is no design. */
function withoutSettings(connection: Connection, { settingsFiles }: Editor): Connection {
  const onDidChangeWatchedFiles: Connection["onDidChangeWatchedFiles"] = (handler) =>
    connection.onDidChangeWatchedFiles((params) => {
      const designs = params.changes.filter(({ uri }) => !settingsFiles.isSettings(uri));
      for (const { uri } of params.changes) if (settingsFiles.isSettings(uri)) void settingsFiles.update(uri);
      if (designs.length > 0) handler({ ...params, changes: designs });
    });
  return Object.create(connection, { onDidChangeWatchedFiles: { value: onDidChangeWatchedFiles } });
}

/** The settings as the client has them at the start; none where it cannot be asked. */
async function ownSettings(editor: Editor): Promise<unknown> {
  const configuration = editor.services.workspace.ConfigurationProvider;
  const values = await Promise.all(chosen.map((name) => configuration.getConfiguration(section, name)));
  return Object.fromEntries(chosen.map((name, index) => [name, values[index]]));
}

/** Some clients send the new settings, others only say that there are some. */
async function changedSettings(connection: Connection, { settings }: DidChangeConfigurationParams): Promise<unknown> {
  const sent = (settings as Record<string, unknown> | null | undefined)?.[section];
  return sent ?? connection.workspace.getConfiguration(section);
}

function report(editor: Editor, error: unknown): void {
  editor.connection?.console.error(faultText(error));
}
