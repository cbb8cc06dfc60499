import { l10n, type TextDocument, type TextEditor, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

/** Asks one of the server's own questions, besides those that every language server answers. */
export function ask<Result>(
  client: BaseLanguageClient,
  method: string,
  uri: string,
  more: object,
): Promise<Result | null> {
  return client.sendRequest<Result | null>(method, { textDocument: { uri }, ...more });
}

/** How the client writes the address of a document to the server. */
export function addressOf(client: BaseLanguageClient, document: TextDocument): string {
  return client.code2ProtocolConverter.asUri(document.uri);
}

/** The design that is being edited; says what to do where there is none. */
export function designEditor(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId === "sunwright") return editor;
  void window.showInformationMessage(l10n.t("Open a design (a .sun file) first, and put the cursor in it."));
  return undefined;
}
