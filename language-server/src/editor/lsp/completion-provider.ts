import type { LangiumDocument } from "langium";
import type { CompletionProvider, CompletionProviderOptions } from "langium/lsp";
import {
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
  CompletionTriggerKind,
} from "vscode-languageserver";
import { completeAt } from "../completion/completion.js";
import type { OfferSort } from "../completion/offer.js";
import type { Editor } from "./editor.js";

const kinds: Readonly<Record<OfferSort, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword,
  kind: CompletionItemKind.Class,
  property: CompletionItemKind.Property,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  part: CompletionItemKind.Struct,
  item: CompletionItemKind.Variable,
  terminal: CompletionItemKind.Field,
  rule: CompletionItemKind.Constant,
  file: CompletionItemKind.File,
  name: CompletionItemKind.Text,
};

export class DesignCompletionProvider implements CompletionProvider {
  readonly completionOptions: CompletionProviderOptions = { triggerCharacters: [" ", ".", ":", '"'] };

  constructor(private readonly editor: Editor) {}

  getCompletion(document: LangiumDocument, { position, context }: CompletionParams): CompletionList | undefined {
    const { view, positions, settings } = this.editor;
    const uri = document.uri.toString();
    const typed =
      context?.triggerKind === CompletionTriggerKind.TriggerCharacter ? context.triggerCharacter : undefined;
    const completion = completeAt(view, uri, positions.offset(uri, position), { docs: settings.docs, typed });
    if (!completion) return undefined;
    const range = positions.range(completion.span);
    return {
      isIncomplete: false,
      items: completion.offers.map(({ label, sort, detail, documentation, insert = label }, index) => ({
        label,
        kind: kinds[sort],
        detail,
        ...(documentation ? { documentation: { kind: "markdown", value: documentation } } : {}),
        // The list is in order already: what is usual, free or open comes first.
        sortText: String(index).padStart(5, "0"),
        filterText: label,
        textEdit: { range, newText: insert },
      })),
    };
  }
}
