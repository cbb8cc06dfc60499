import * as l10n from "@vscode/l10n";
import type { Tab } from "../src/panel/messages";
import { element } from "./dom";

/** The views of a design to choose from: one key to come here, arrows to go among them. */
export class Tabs {
  readonly list = element("div", { class: "tabs", role: "tablist", "aria-label": l10n.t("Views of the design") });
  private readonly tabs: readonly HTMLButtonElement[];

  constructor(private readonly choose: (tab: Tab) => void) {
    this.tabs = (Object.entries(tabNames()) as [Tab, string][]).map(([tab, name]) => {
      const made = element(
        "button",
        { type: "button", role: "tab", id: `tab-${tab}`, "data-tab": tab, "aria-controls": controlledBy(tab) },
        name,
      );
      made.addEventListener("click", () => this.choose(tab));
      return made;
    });
    this.list.append(...this.tabs);
    this.list.addEventListener("keydown", (event) => this.press(event));
  }

  show(tab: Tab): void {
    for (const each of this.tabs) {
      const isChosen = each.dataset.tab === tab;
      each.setAttribute("aria-selected", String(isChosen));
      each.tabIndex = isChosen ? 0 : -1;
    }
  }

  private press(event: KeyboardEvent): void {
    const { tabs } = this;
    const at = tabs.indexOf(document.activeElement as HTMLButtonElement);
    const next = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (at < 0 || next === undefined) return;
    event.preventDefault();
    const chosen = tabs[(next + tabs.length) % tabs.length]!;
    chosen.focus();
    this.choose(chosen.dataset.tab as Tab);
  }
}

/** How each view is called. */
function tabNames(): Readonly<Record<Tab, string>> {
  return {
    diagram: l10n.t("Diagram"),
    voltage: l10n.t("String voltage"),
    curve: l10n.t("Current–voltage"),
    margins: l10n.t("Margins"),
    drop: l10n.t("Voltage drop"),
  };
}

function controlledBy(tab: Tab): string {
  return tab === "diagram" ? "view-diagram" : "view-chart";
}
