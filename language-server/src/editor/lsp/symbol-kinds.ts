import { CompletionItemKind, SymbolKind } from "vscode-languageserver";
import type { ThingSort } from "../thing-sort.js";

/**
 * The editor knows no strings and breakers, only pictures for sorts of program text. A sort of thing has the same one
 * everywhere: in the outline, among the symbols of the workspace, in what feeds what, and in what is offered. The bolt
 * is for what is live whenever there is light, plus and minus for direct current.
 */
const pictures = {
  string: "Event",
  source: "Function",
  port: "Field",
  "dc-device": "Operator",
  "ac-device": "Variable",
  device: "Enum",
  board: "Module",
  earthing: "TypeParameter",
  run: "Interface",
  block: "Property",
} as const satisfies Record<ThingSort, keyof typeof SymbolKind & keyof typeof CompletionItemKind>;

export const symbolKind = (sort: ThingSort): SymbolKind => SymbolKind[pictures[sort]];
export const completionKind = (sort: ThingSort): CompletionItemKind => CompletionItemKind[pictures[sort]];
export const thingSorts = Object.keys(pictures) as ThingSort[];
