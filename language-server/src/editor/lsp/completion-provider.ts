import type { LangiumDocument } from "langium";
import type { CompletionProvider, CompletionProviderOptions } from "langium/lsp";
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
  CompletionTriggerKind,
  InsertTextFormat,
  type Range,
} from "vscode-languageserver";
import { completeAt } from "../completion/completion.js";
import type { Offer, OfferSort } from "../completion/offer.js";
import type { ThingSort } from "../thing-sort.js";
import type { Editor } from "./editor.js";
import { completionKind } from "./symbol-kinds.js";

const kinds: Readonly<Record<Exclude<OfferSort, ThingSort>, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword,
  kind: CompletionItemKind.Class,
  property: CompletionItemKind.Property,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  part: CompletionItemKind.Struct,
  terminal: CompletionItemKind.Field,
  rule: CompletionItemKind.Constant,
  file: CompletionItemKind.File,
  name: CompletionItemKind.Value,
  snippet: CompletionItemKind.Snippet,
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
      items: completion.offers.flatMap((offer, index) => this.item(offer, index, range)),
    };
  }

  private item(
    { label, sort, detail, documentation, insert = label, snippet, filter = label }: Offer,
    index: number,
    range: Range,
  ): CompletionItem[] {
    // Places to fill in are nothing to an editor that would write them down as they are.
    if (snippet !== undefined && !this.editor.knowsSnippets) return [];
    return [
      {
        label,
        kind: sort in kinds ? kinds[sort as keyof typeof kinds] : completionKind(sort as ThingSort),
        detail,
        ...(documentation ? { documentation: { kind: "markdown", value: documentation } } : {}),
        // The list is in order already: what is usual, free or open comes first.
        sortText: String(index).padStart(5, "0"),
        filterText: filter,
        textEdit: { range, newText: snippet ?? insert },
        ...(snippet === undefined ? {} : { insertTextFormat: InsertTextFormat.Snippet }),
      },
    ];
  }
}
