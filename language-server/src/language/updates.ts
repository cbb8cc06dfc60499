import { delayNextTick, type TextDocument, URI } from "langium";
import { DefaultDocumentUpdateHandler, type LangiumSharedServices } from "langium/lsp";
import type { FileSystemWatcher, TextDocumentChangeEvent } from "vscode-languageserver";
import type { SunwrightDocumentBuilder } from "./builder.js";

/**
 * Turns edits into builds. Edits that have arrived already are taken together: messages are handled one a tick, so
 * when two ticks bring none, there is nothing newer to wait for. No time is waited on purpose.
 */
export class SunwrightUpdateHandler extends DefaultDocumentUpdateHandler {
  private readonly files: LangiumSharedServices["workspace"]["FileSystemProvider"];
  private readonly open: LangiumSharedServices["workspace"]["TextDocuments"];
  private readonly builder: SunwrightDocumentBuilder;
  private readonly pending = new Map<string, URI>();
  private turn = 0;

  constructor(services: LangiumSharedServices) {
    super(services);
    this.files = services.workspace.FileSystemProvider;
    this.open = services.workspace.TextDocuments;
    this.builder = services.workspace.DocumentBuilder as SunwrightDocumentBuilder;
  }

  /** Design and settings files only; a watcher for every file of a workspace costs a message for each. */
  protected override getWatchers(): FileSystemWatcher[] {
    return [{ globPattern: "**/*.sun" }, { globPattern: "**/sunwright.json" }];
  }

  override didChangeContent(change: TextDocumentChangeEvent<TextDocument>): void {
    const uri = URI.parse(change.document.uri);
    this.pending.set(uri.toString(), uri);
    // What is being built is of yesterday: drop it.
    this.workspaceLock.cancelWrite();
    this.builder.announce(uri);
    void this.settle(++this.turn);
  }

  /** Without the editor's text, the file's own counts again; what is no file is gone. */
  async didCloseDocument(change: TextDocumentChangeEvent<TextDocument>): Promise<void> {
    const uri = URI.parse(change.document.uri);
    const isFile = await this.files.exists(uri).catch(() => false);
    this.fireDocumentUpdate(isFile ? [uri] : [], isFile ? [] : [uri]);
  }

  /** What is open counts as the editor has it: a file that is gone from the disk is gone when it is closed too. */
  protected override fireDocumentUpdate(changed: URI[], deleted: URI[]): void {
    super.fireDocumentUpdate(
      changed,
      deleted.filter((uri) => this.open.get(uri.toString()) === undefined),
    );
  }

  private async settle(turn: number): Promise<void> {
    for (let tick = 0; tick < 2; tick++) {
      await delayNextTick();
      if (turn !== this.turn) return;
    }
    const changed = [...this.pending.values()];
    this.pending.clear();
    this.fireDocumentUpdate(changed, []);
  }
}
