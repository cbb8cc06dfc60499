import { l10n, type TextDocument, type TextEditor, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

/* The server's own questions, besides those that every language server answers. */

export interface WhatIfResult {
  readonly suppositions: readonly string[];
  readonly refused?: string;
}
export interface Choice {
  readonly id: string;
  readonly detail: string;
}
export interface DesignChoices {
  readonly entry: string;
  readonly title?: string;
  readonly devices: readonly Choice[];
  readonly things: readonly Choice[];
}
export interface SwitchingResult {
  readonly designs: readonly DesignChoices[];
  readonly at?: string;
}
export type Answer = { readonly markdown: string; readonly refused?: undefined } | { readonly refused: string };

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
