import { type Disposable, type ExtensionContext, l10n, Uri, ViewColumn, type WebviewPanel, window } from "vscode";
import type { FromPage, ToPage } from "./messages";
import { pageFolder, panelPage } from "./page";

export const panelType = "sunwright.diagram";

/** Hears what the page of a panel says, and when the panel goes. */
export interface Listener {
  hear(message: FromPage): void;
  closed(): void;
}

/** The panel beside the text: a page that is told what to show and says what was done in it. */
export class DiagramPanel {
  private readonly parts: Disposable[];

  private constructor(
    private readonly panel: WebviewPanel,
    context: ExtensionContext,
    listener: Listener,
  ) {
    const { webview } = panel;
    webview.options = { enableScripts: true, localResourceRoots: [Uri.joinPath(context.extensionUri, ...pageFolder)] };
    panel.iconPath = Uri.joinPath(context.extensionUri, "icons", "sunwright.png");
    this.parts = [
      webview.onDidReceiveMessage((message: FromPage) => listener.hear(message)),
      panel.onDidDispose(() => {
        for (const part of this.parts) part.dispose();
        listener.closed();
      }),
    ];
    webview.html = panelPage(webview, context.extensionUri);
  }

  static open(context: ExtensionContext, listener: Listener): DiagramPanel {
    const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
    return new DiagramPanel(window.createWebviewPanel(panelType, l10n.t("Diagram"), place), context, listener);
  }

  /** A panel that the editor brought back. */
  static restore(panel: WebviewPanel, context: ExtensionContext, listener: Listener): DiagramPanel {
    return new DiagramPanel(panel, context, listener);
  }

  get column(): ViewColumn | undefined {
    return this.panel.viewColumn;
  }

  say(message: ToPage): void {
    void this.panel.webview.postMessage(message);
  }

  title(words: string): void {
    this.panel.title = words;
  }

  reveal(): void {
    this.panel.reveal(undefined, true);
  }

  close(): void {
    this.panel.dispose();
  }
}
