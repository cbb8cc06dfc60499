import { commands, type Disposable, EventEmitter, Uri, window, workspace } from "vscode";

const scheme = "sunwright-answer";

/** Answers as pages to read: Markdown documents that are in no file. */
export class AnswerPages implements Disposable {
  private readonly texts = new Map<string, string>();
  private readonly changed = new EventEmitter<Uri>();
  private readonly parts: Disposable[] = [
    this.changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: this.changed.event,
      provideTextDocumentContent: (uri) => this.texts.get(uri.toString()) ?? "",
    }),
  ];

  /** Shows a page; one of the same name is shown anew. */
  async show(name: string, markdown: string): Promise<void> {
    const uri = Uri.from({ scheme, path: `/${name.replaceAll("/", " ")}.md` });
    this.texts.set(uri.toString(), markdown);
    this.changed.fire(uri);
    const document = await workspace.openTextDocument(uri);
    try {
      // Asked for by name, it also starts what shows it; a list of commands lacks it until then.
      await commands.executeCommand("markdown.showPreview", uri);
    } catch {
      // Where the editor has no preview of its own, its text can be read as it is.
      await window.showTextDocument(document, { preview: true });
    }
  }

  dispose(): void {
    for (const part of this.parts) part.dispose();
  }
}
