import { format } from "../../format/format.js";
import type { ChunkParser } from "../../language/chunk-parser.js";
import { createChunkParser } from "../../language/parser-module.js";
import { SourceFile } from "../../language/source-file.js";
import type { WorkspaceView } from "../workspace-view.js";
import { applied, type Change, type Edit } from "./change.js";

let parser: ChunkParser | undefined;
/** The file that was laid out last: the next text of it is much the same, and only what differs is read again. */
let last: SourceFile | undefined;

/**
 * The same edit, but what had the look of the language has it afterwards: how wide a block's names are, and whether it
 * still goes on one line, is known only once it is changed. A file that its writer lays out otherwise is left so.
 */
export function tidied<Any extends Edit>(view: WorkspaceView, edit: Any): Any {
  const uris = [...new Set(edit.changes.map(({ uri }) => uri))];
  const inLook = new Set(uris.filter((uri) => hasLook(view, uri)));
  if (inLook.size === 0) return edit;
  const changes = uris.flatMap((uri) => {
    const own = edit.changes.filter((change) => change.uri === uri);
    return inLook.has(uri) ? laidOut(view.sources.text(uri) ?? "", uri, own) : own;
  });
  const { creates } = edit;
  return creates
    ? { ...edit, changes, creates: { ...creates, text: formatted(creates.uri, creates.text) } }
    : { ...edit, changes };
}

function hasLook({ sources }: WorkspaceView, uri: string): boolean {
  const text = sources.text(uri);
  return text !== undefined && format(text, sources.fragments(uri)).edits.length === 0;
}

function laidOut(text: string, uri: string, changes: readonly Change[]): readonly Change[] {
  const after = applied(text, changes);
  const wanted = formatted(uri, after);
  return wanted === after ? changes : [difference(text, wanted, uri)];
}

function formatted(uri: string, text: string): string {
  parser ??= createChunkParser();
  if (last?.uri !== uri) last = new SourceFile(uri, parser);
  last.update(text);
  return format(text, last.fragments).text;
}

/** The one stretch in which two texts differ. */
function difference(before: string, after: string, uri: string): Change {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let same = 0;
  while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  return { uri, start, end: before.length - same, text: after.slice(start, after.length - same) };
}
