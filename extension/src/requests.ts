import { l10n, type TextDocument, type TextEditor, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { designInFront } from "./designs";

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
  const editor = designInFront();
  if (editor) return editor;
  const isVersion = window.activeTextEditor?.document.languageId === "sunwright";
  void window.showInformationMessage(
    isVersion
      ? l10n.t("This is another version of a design, and is not computed. Put the cursor in the design itself.")
      : l10n.t("Open a design (a .sun file) first, and put the cursor in it."),
  );
  return undefined;
}
