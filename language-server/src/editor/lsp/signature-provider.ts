import type { LangiumDocument } from "langium";
import type { SignatureHelpProvider } from "langium/lsp";
import {
  type SignatureHelp,
  type SignatureHelpOptions,
  type SignatureHelpParams,
  SignatureHelpTriggerKind,
} from "vscode-languageserver";
import { signatureAt } from "../completion/signature.js";
import type { Editor } from "./editor.js";

export class DesignSignatureProvider implements SignatureHelpProvider {
  constructor(private readonly editor: Editor) {}

  get signatureHelpOptions(): SignatureHelpOptions {
    return { triggerCharacters: [" ", ":"] };
  }

  provideSignatureHelp(
    document: LangiumDocument,
    { position, context }: SignatureHelpParams,
  ): SignatureHelp | undefined {
    const { view, positions } = this.editor;
    const uri = document.uri.toString();
    const asked = !context || context.triggerKind === SignatureHelpTriggerKind.Invoked;
    const signature = signatureAt(view, uri, positions.offset(uri, position), asked);
    if (!signature) return undefined;
    const { label, documentation, places, active } = signature;
    return {
      signatures: [
        {
          label,
          documentation: { kind: "markdown", value: documentation },
          parameters: places.map((place) => ({ label: place.label, documentation: place.documentation })),
        },
      ],
      activeSignature: 0,
      activeParameter: active,
    };
  }
}
