import { getLanguageService } from "vscode-json-languageservice";
import {
  createConnection,
  DocumentDiagnosticReportKind,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

/**
 * The yardstick: a server over the JSON language service of the editor itself, with pull diagnostics and nothing
 * else, so that it has less to do than the one that ships with the editor.
 */
const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const service = getLanguageService({ clientCapabilities: {} });
service.configure({
  validate: true,
  schemas: [
    {
      uri: "schema:houses",
      fileMatch: ["*"],
      schema: {
        type: "array",
        items: {
          type: "object",
          additionalProperties: false,
          required: ["name", "count", "module"],
          properties: {
            name: { type: "string", pattern: "^[A-Z]+[0-9]+$" },
            count: { type: "integer", minimum: 1, maximum: 30 },
            module: { type: "string" },
            tilt: { type: "number", minimum: 0, maximum: 90 },
            azimuth: { type: "number", minimum: 0, maximum: 360 },
            mounting: { enum: ["on-roof", "in-roof", "ground"] },
          },
        },
      },
    },
  ],
});

connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: TextDocumentSyncKind.Incremental,
    diagnosticProvider: { interFileDependencies: false, workspaceDiagnostics: false },
  },
}));
connection.languages.diagnostics.on(async ({ textDocument }) => {
  const document = documents.get(textDocument.uri);
  if (!document) return { kind: DocumentDiagnosticReportKind.Full, items: [] };
  const items = await service.doValidation(document, service.parseJSONDocument(document));
  return { kind: DocumentDiagnosticReportKind.Full, items };
});
documents.listen(connection);
connection.listen();
