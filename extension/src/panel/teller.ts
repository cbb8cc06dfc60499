import MarkdownIt from "markdown-it";
import { commands, Range, Uri, ViewColumn, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { PlaceResult } from "../../../language-server/src/editor/lsp/diagram-requests";

interface Hover {
  readonly contents: { readonly value: string };
}

/** What the text's own hover says of a thing, for the page; its links are opened here and lead to our own files alone. */
export class Teller {
  private readonly markdown = new MarkdownIt({ html: false, linkify: false });

  constructor(
    private readonly client: BaseLanguageClient,
    private readonly extension: Uri,
  ) {
    this.markdown.validateLink = (href) => this.isOurs(href);
  }

  async tell({ uri, name }: PlaceResult): Promise<string | undefined> {
    const where = { textDocument: { uri }, position: name.start };
    const hover = await this.client.sendRequest<Hover | null>("textDocument/hover", where);
    return hover ? this.markdown.render(hover.contents.value) : undefined;
  }

  async follow(href: string, panel: ViewColumn | undefined): Promise<void> {
    if (!this.isOurs(href)) return;
    const uri = Uri.parse(href);
    if (uri.path.endsWith(".md")) {
      await commands.executeCommand("markdown.showPreview", uri);
      return;
    }
    const [, line = "1", column = "1"] = /^L(\d+)(?:,(\d+))?/.exec(uri.fragment) ?? [];
    const at = [Number(line) - 1, Number(column) - 1] as const;
    await window.showTextDocument(uri.with({ fragment: "" }), {
      viewColumn: panel === ViewColumn.One ? ViewColumn.Two : ViewColumn.One,
      preview: false,
      selection: new Range(...at, ...at),
    });
  }

  showRule(rule: string): Thenable<unknown> {
    return commands.executeCommand(
      "markdown.showPreview",
      Uri.joinPath(this.extension, "docs", "rules", `${rule.replaceAll(/[^\w-]/g, "")}.md`),
    );
  }

  private isOurs(href: string): boolean {
    if (!/^[a-z][\w+.-]*:/i.test(href)) return false;
    const uri = Uri.parse(href);
    const docs = Uri.joinPath(this.extension, "docs");
    const isDocs =
      uri.scheme === docs.scheme && uri.authority === docs.authority && uri.path.startsWith(`${docs.path}/`);
    return isDocs || (uri.path.endsWith(".sun") && workspace.getWorkspaceFolder(uri) !== undefined);
  }
}
