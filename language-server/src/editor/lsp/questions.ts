import { DocumentState, UriUtils } from "langium";
import { createServerRequestHandler } from "langium/lsp";
import type { Connection, TextDocumentIdentifier } from "vscode-languageserver";
import type { Mode } from "../../circuit/modes.js";
import type { Editor } from "./editor.js";

/** Questions of our own name a document, as every language server's do. */
export interface About {
  readonly textDocument: TextDocumentIdentifier;
}

/** Registers a question of our own; it is answered about the text as it stands in the editor. */
export function answerTo<Params extends About>(
  connection: Connection,
  editor: Editor,
  method: string,
  give: (uri: string, params: Params) => object | Promise<object>,
): void {
  const handler = createServerRequestHandler<Params, object, void>(
    (_, document, params) => give(document.uri.toString(), params),
    editor.services,
    DocumentState.IndexedReferences,
  );
  connection.onRequest(method, (params: Params, token) => handler(params, token));
}

/** Questions about one of the designs that a document belongs to. */
export interface AboutDesign extends About {
  /** Which design, by the file it begins in. */
  readonly design?: string;
}

export function askedDesign({ design }: AboutDesign): string | undefined {
  return design === undefined ? undefined : UriUtils.normalize(design);
}

/** A word that is no mode asks about all modes, never about none. */
export function askedMode({ light, supply }: Partial<Mode>): Partial<Mode> {
  return {
    light: light === "day" || light === "night" ? light : undefined,
    supply: supply === "grid" || supply === "island" ? supply : undefined,
  };
}
