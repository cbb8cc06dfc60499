import { commands, type Disposable, l10n, StatusBarAlignment, type StatusBarItem, Uri, window } from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type { DesignStatus } from "../../../language-server/src/editor/status/status";
import { designInFront } from "../designs";
import { pickPlace } from "./pick-place";

/** Sorts in signs; the words beside them say the same. */
const signs: Readonly<Record<DesignStatus["sort"], string>> = {
  findings: "$(warning)",
  "not-checked": "$(question)",
  "nothing-found": "$(info)",
};

/** How the design in front stands, in the status bar. The server says so whenever it has changed. */
export class VerdictItem implements Disposable {
  private readonly item: StatusBarItem;
  private readonly parts: Disposable[];
  private readonly verdicts = new Map<string, readonly DesignStatus[]>();
  /** The design that was chosen last of those that a file belongs to. */
  private chosen: string | undefined;

  constructor(private readonly client: BaseLanguageClient) {
    this.item = window.createStatusBarItem("sunwright.verdict", StatusBarAlignment.Left, 20);
    this.item.name = l10n.t("Sunwright: Findings");
    this.item.command = "sunwright.showFindings";
    this.parts = [
      this.item,
      commands.registerCommand("sunwright.showFindings", () => this.ask()),
      client.onNotification("sunwright/verdict", (told: { uri: string; designs: DesignStatus[] }) => {
        this.verdicts.set(Uri.parse(told.uri).toString(), told.designs);
        this.show();
      }),
      // What was said went with the server that said it.
      client.onDidChangeState(({ newState }) => {
        if (newState !== State.Stopped) return;
        this.verdicts.clear();
        this.show();
      }),
      window.onDidChangeActiveTextEditor(() => this.show()),
    ];
  }

  private designs(): readonly DesignStatus[] {
    const design = designInFront();
    return (design && this.verdicts.get(design.document.uri.toString())) ?? [];
  }

  private current(designs = this.designs()): DesignStatus | undefined {
    return designs.find(({ entry }) => entry === this.chosen) ?? designs[0];
  }

  private show(): void {
    const designs = this.designs();
    const design = this.current(designs);
    if (!design) {
      this.item.hide();
      return;
    }
    const more =
      designs.length > 1 ? l10n.t("This file belongs to {0} designs; this is one of them.", designs.length) : "";
    const press = l10n.t("Press to see what there is to look at.");
    this.item.text = `${signs[design.sort]} ${design.text}`;
    this.item.tooltip = [design.sentence, more, press].filter(Boolean).join("\n");
    this.item.accessibilityInformation = {
      label: [design.sentence, more, press].filter(Boolean).join(". "),
      role: "button",
    };
    this.item.show();
  }

  private async ask(): Promise<void> {
    const designs = this.designs();
    const design = this.current(designs);
    if (!design) {
      void window.showInformationMessage(
        l10n.t("Open a design (a .sun file) first: there is nothing to look at here."),
      );
      return;
    }
    const other = await pickPlace(this.client, design, designs);
    if (!other) return;
    this.chosen = other.entry;
    this.show();
    await this.ask();
  }

  dispose(): void {
    for (const part of this.parts) part.dispose();
  }
}
