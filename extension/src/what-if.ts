import { commands, type Disposable, l10n, StatusBarAlignment, type StatusBarItem, window } from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type { WhatIfResult } from "../../language-server/src/editor/lsp/design-requests";
import { addressOf, ask, designEditor } from "./requests";

/** Suppose something, see what would come out, and let go of it. Lives in the server's memory only. */
export class WhatIf implements Disposable {
  private readonly item: StatusBarItem;
  private readonly parts: Disposable[];
  /** What is supposed, as it was typed, and in which design. */
  private current: { readonly text: string; readonly uri: string } | undefined;

  constructor(private readonly client: BaseLanguageClient) {
    this.item = window.createStatusBarItem("sunwright.whatIf", StatusBarAlignment.Left, 10);
    this.item.name = l10n.t("Sunwright: What If");
    this.item.command = "sunwright.clearWhatIf";
    this.parts = [
      this.item,
      commands.registerCommand("sunwright.whatIf", (text?: unknown) => this.suppose(text)),
      commands.registerCommand("sunwright.clearWhatIf", () => this.clear()),
      // What was supposed went with the server that remembered it.
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Stopped) this.show(undefined, []);
      }),
    ];
  }

  /** Asks for a text where a caller brings none. */
  private async suppose(given: unknown): Promise<void> {
    const editor = designEditor();
    if (!editor) return;
    const uri = addressOf(this.client, editor.document);
    const text = typeof given === "string" ? given : await this.askFor(uri);
    if (text === undefined) return;
    if (text.trim() === "") return this.clear();
    const result = await this.request(uri, text, false);
    if (!result) return;
    if (result.refused !== undefined) void window.showErrorMessage(result.refused);
    else this.show({ text, uri }, result.suppositions);
  }

  private askFor(uri: string): Thenable<string | undefined> {
    return window.showInputBox({
      title: l10n.t("What If"),
      prompt: l10n.t("Several with semicolons between. Nothing is written; an empty line lets go of it."),
      placeHolder: l10n.t("such as {0}", "site.lowest-temperature = -15 degC; S1.count = 12; W1.length = 25 m"),
      value: this.current?.text,
      ignoreFocusOut: true,
      validateInput: async (text) => {
        if (text.trim() === "") return undefined;
        return (await this.request(uri, text, true))?.refused;
      },
    });
  }

  private async clear(): Promise<void> {
    if (this.current) await this.request(this.current.uri, "", false);
    this.show(undefined, []);
  }

  private request(uri: string, text: string, tryOnly: boolean): Promise<WhatIfResult | null> {
    return ask<WhatIfResult>(this.client, "sunwright/whatIf", uri, { text, tryOnly });
  }

  private show(current: typeof this.current, suppositions: readonly string[]): void {
    this.current = current;
    void commands.executeCommand("setContext", "sunwright.supposes", current !== undefined);
    if (!current) {
      this.item.hide();
      return;
    }
    this.item.text = `$(beaker) ${l10n.t("what if {0} (clear)", current.text)}`;
    this.item.tooltip = `${suppositions.join("\n")}\n${l10n.t("Results are of what is supposed; no file says so. Press to let go of it.")}`;
    this.item.accessibilityInformation = {
      label: l10n.t("What if {0}. Press to clear.", suppositions.join(l10n.t(" and "))),
    };
    this.item.show();
  }

  dispose(): void {
    for (const part of this.parts) part.dispose();
  }
}
