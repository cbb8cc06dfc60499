import { type OutlineEntry, outlineOf } from "./outline.js";
import type { WorkspaceView } from "./workspace-view.js";

/** More are no help in a list to choose from. */
const most = 500;

export interface WorkspaceSymbol {
  readonly entry: OutlineEntry;
  readonly container: string;
}

/** Everything declared in the workspace whose name holds the letters of a query in their order. */
export function symbolsCalled(view: WorkspaceView, query: string): WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = [];
  const wanted = query.toLowerCase();
  const look = (entry: OutlineEntry, container: string): void => {
    if (found.length >= most) return;
    if (entry.sort !== "file" && holds(entry.name.toLowerCase(), wanted)) found.push({ entry, container });
    for (const child of entry.children) look(child, entry.name);
  };
  for (const uri of view.sources.uris()) {
    const file = uri.slice(uri.lastIndexOf("/") + 1);
    for (const entry of outlineOf(view, uri)) look(entry, safeDecode(file));
  }
  return found;
}

function holds(name: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = name.indexOf(letter, at);
    if (at < 0) return false;
    at++;
  }
  return true;
}

function safeDecode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
