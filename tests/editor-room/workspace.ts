import type { Fragment, UseDeclaration } from "../../language-server/src/design/model.js";
import type { Sources } from "../../language-server/src/editor/sources.js";
import { WorkspaceView } from "../../language-server/src/editor/workspace-view.js";
import { resolveUse } from "../../language-server/src/language/files.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

/** Files by name, kept in memory: enough of a project to ask the editor's functions about. */
export class TestWorkspace implements Sources {
  readonly view = new WorkspaceView(this);
  private readonly files = new Map<string, SourceFile>();
  private readonly usesOf = new WeakMap<readonly Fragment[], readonly string[]>();

  constructor(texts: Record<string, string>) {
    for (const [name, text] of Object.entries(texts)) this.write(name, text);
  }

  write(name: string, text: string): void {
    const uri = uriOf(name);
    const file = this.files.get(uri) ?? new SourceFile(uri, parser);
    file.update(text);
    this.files.set(uri, file);
  }

  uris(): Iterable<string> {
    return this.files.keys();
  }
  text(uri: string): string | undefined {
    return this.files.get(uri)?.text;
  }
  fragments(uri: string): readonly Fragment[] {
    return this.files.get(uri)?.fragments ?? [];
  }
  reach(uri: string): readonly string[] {
    const reached = [uri];
    for (const file of reached)
      for (const used of this.uses(file)) if (this.files.has(used) && !reached.includes(used)) reached.push(used);
    return reached;
  }
  usedBy(uri: string): readonly string[] {
    return [...this.files.keys()].filter((other) => this.uses(other).includes(uri));
  }

  private uses(uri: string): readonly string[] {
    const fragments = this.fragments(uri);
    const known = this.usesOf.get(fragments);
    if (known) return known;
    const uses = fragments
      .flatMap(({ declarations }) => declarations)
      .filter((declaration): declaration is UseDeclaration => declaration.declares === "use")
      .map(({ path }) => resolveUse(uri, path));
    this.usesOf.set(fragments, uses);
    return uses;
  }
}

export function uriOf(name: string): string {
  return `file:///house/${name}`;
}

/** A text with `<|>` where the cursor is: the text without it, and its offset. */
export function withCursor(marked: string): { text: string; offset: number } {
  const offset = marked.indexOf("<|>");
  if (offset < 0 || marked.indexOf("<|>", offset + 1) >= 0) throw new Error(`one <|> is needed in: ${marked}`);
  return { text: marked.slice(0, offset) + marked.slice(offset + 3), offset };
}

/** The text of spans of one file, for short expectations. */
export function textsOf(
  workspace: TestWorkspace,
  spans: readonly { uri: string; start: number; end: number }[],
): string[] {
  return spans.map(({ uri, start, end }) => {
    const name = uri.slice(uri.lastIndexOf("/") + 1);
    return `${name}:${start} ${workspace.text(uri)?.slice(start, end)}`;
  });
}
