import type { Block, ItemDeclaration } from "../design/model.js";
import { type FormatEdit, format } from "../format/format.js";
import { lineStart } from "./edits/layout.js";
import { fragmentAt } from "./fragment-at.js";
import type { WorkspaceView } from "./workspace-view.js";

/** Edits that give a file, or a stretch of it, the look of the language. Offsets. */
export function formatEdits(
  view: WorkspaceView,
  uri: string,
  stretch: { readonly start: number; readonly end: number } = { start: 0, end: Number.POSITIVE_INFINITY },
): readonly FormatEdit[] {
  const text = view.sources.text(uri);
  if (text === undefined) return [];
  const { edits } = format(text, view.sources.fragments(uri));
  return edits.filter(({ start, end }) => start >= stretch.start && end <= stretch.end);
}

/** Keys after which the text before the cursor is formatted: a closing brace its block, a new line the one just left. */
export const formatKeys = ["}", "\n"] as const;

/** The edits after a key; the line that is being begun is not touched. */
export function formatEditsBehind(
  view: WorkspaceView,
  uri: string,
  offset: number,
  key: string,
): readonly FormatEdit[] {
  const text = view.sources.text(uri);
  if (text === undefined) return [];
  if (key === "}") {
    const start = blockClosedAt(view, uri, offset);
    return start === undefined ? [] : formatEdits(view, uri, { start: lineStart(text, start), end: offset });
  }
  const ending = lineStart(text, offset) - 1;
  if (ending < 0) return [];
  const end = text[ending - 1] === "\r" && text[ending] === "\n" ? ending - 1 : ending;
  return formatEdits(view, uri, { start: lineStart(text, end), end });
}

/** Where the declaration begins whose block ends at an offset. */
function blockClosedAt(view: WorkspaceView, uri: string, offset: number): number | undefined {
  const fragment = fragmentAt(view.sources.fragments(uri), Math.max(0, offset - 1));
  if (!fragment || fragment.broken) return undefined;
  const within = offset - fragment.chunk.start;
  const find = (block: Block & { readonly place: ItemDeclaration["place"] }): number | undefined => {
    if (block.bodyPlace?.to === within) return fragment.chunk.start + block.place.from;
    for (const nested of block.nested) {
      const found = find(nested);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  for (const declaration of fragment.declarations) {
    const found = "properties" in declaration ? find(declaration) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}
