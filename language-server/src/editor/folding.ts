import type { Block, ItemDeclaration } from "../design/model.js";
import { absolute } from "../place.js";
import type { Span } from "./navigate.js";
import type { WorkspaceView } from "./workspace-view.js";

export interface Fold {
  readonly span: Span;
  readonly is: "block" | "comment";
}

/** Blocks between braces and comments of several lines. */
export function foldsOf(view: WorkspaceView, uri: string): Fold[] {
  const folds: Fold[] = [];
  const add = (block: Block): void => {
    if (block.bodyPlace && view.isLive(block.bodyPlace)) folds.push({ span: absolute(block.bodyPlace), is: "block" });
    for (const nested of block.nested as readonly ItemDeclaration[]) add(nested);
  };
  for (const { declarations } of view.sources.fragments(uri))
    for (const declaration of declarations)
      if (declaration.declares !== "use" && declaration.declares !== "expect") add(declaration);
  for (const span of commentsOf(uri, view.sources.text(uri) ?? "")) folds.push({ span, is: "comment" });
  return folds;
}

/** Block comments; strings are skipped, because they may hold the same signs. */
function* commentsOf(uri: string, text: string): Generator<Span> {
  const pattern = /"(?:\\.|[^"\\\r\n])*"|\/\/[^\r\n]*|\/\*[\s\S]*?\*\//g;
  for (const match of text.matchAll(pattern)) {
    if (match[0].startsWith("/*")) yield { uri, start: match.index, end: match.index + match[0].length };
  }
}
