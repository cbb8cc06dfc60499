import * as l10n from "@vscode/l10n";
import type { Mode } from "../../language-server/src/circuit/modes";
import type { ShownLive } from "../src/panel/messages";
import { button, element } from "./dom";
import { say } from "./host";

function lights() {
  return { "": l10n.t("By day and by night"), day: l10n.t("By day"), night: l10n.t("By night") };
}
function supplies() {
  return {
    "": l10n.t("With the grid and in an island"),
    grid: l10n.t("With the grid"),
    island: l10n.t("In an island"),
  };
}

/** What stays live with some devices open: what is switched, in which mode, and each source with what it keeps live. */
export class Switches {
  readonly toggle = button(l10n.t("Operate switches"), { "aria-pressed": "false" }, () =>
    say({ is: "switching", on: this.shown === undefined }),
  );
  readonly box = element("section", { class: "switches", "aria-label": l10n.t("What stays live"), hidden: true });
  private shown: ShownLive | undefined;
  /** What was last switched, until it is known what came of it. */
  private asked: string | undefined;

  get isOn(): boolean {
    return this.shown !== undefined;
  }

  canOpen(id: string): boolean {
    return this.shown?.devices.some((device) => device.id === id) === true;
  }

  press(id: string): void {
    this.asked = id;
    say({ is: "switch", id });
  }

  /** Shows the words; gives what has changed, to be read aloud. */
  show(live: ShownLive | undefined): string | undefined {
    this.shown = live;
    this.toggle.setAttribute("aria-pressed", String(live !== undefined));
    this.box.hidden = live === undefined;
    const { asked } = this;
    this.asked = undefined;
    if (!live) {
      this.box.replaceChildren();
      return undefined;
    }
    const focused = document.activeElement?.getAttribute("data-switch");
    this.box.replaceChildren(...this.words(live));
    if (focused) this.box.querySelector<HTMLElement>(`[data-switch="${CSS.escape(focused)}"]`)?.focus();
    return asked === undefined ? undefined : outcome(asked, live);
  }

  private words(live: ShownLive): HTMLElement[] {
    const { devices, open, mode, notCounted, cautions, incomplete, dead } = live;
    return [
      element(
        "h2",
        {},
        open.length > 0
          ? l10n.t("What stays live with {0} open", open.join(", "))
          : l10n.t("What stays live with nothing open"),
      ),
      element("p", { class: "caution important" }, cautions.filter(isImportant).join(" ")),
      element(
        "div",
        { class: "modes" },
        choice("light", l10n.t("Light"), lights(), mode.light ?? "", (light) => withMode({ ...mode, light })),
        choice("supply", l10n.t("Supply"), supplies(), mode.supply ?? "", (supply) => withMode({ ...mode, supply })),
        button(l10n.t("Close all"), { disabled: open.length === 0 }, () => say({ is: "close-all" })),
      ),
      element(
        "div",
        { class: "devices", role: "group", "aria-label": l10n.t("Devices that can be opened") },
        ...devices.map(({ id, detail }) => {
          const isOpen = open.includes(id);
          // Its name says its state.
          const attributes = { "data-open": String(isOpen), "data-switch": id, title: `${id}: ${detail}` };
          return button(stateOf(id, isOpen), attributes, () => this.press(id));
        }),
      ),
      ...(incomplete
        ? [element("p", { class: "remark" }, l10n.t("The text has errors: nothing here may be taken for dead."))]
        : []),
      element(
        "ul",
        { class: "live" },
        ...live.live.map(({ text, where }) =>
          element("li", {}, element("strong", {}, text), " ", l10n.t("keeps live: {0}", where.join(", "))),
        ),
      ),
      ...(dead.length > 0
        ? [
            element(
              "p",
              { class: "dead" },
              element(
                "strong",
                {},
                incomplete
                  ? l10n.t("Reached by nothing that could be read:")
                  : l10n.t("Reached by nothing, dead if wired as written:"),
              ),
              " ",
              dead.join(", "),
            ),
          ]
        : []),
      ...notCounted.map((words) =>
        element("p", { class: "remark" }, l10n.t("Traced as closed all the same. {0}", words)),
      ),
      ...cautions.filter((words) => !isImportant(words)).map((words) => element("p", { class: "caution" }, words)),
    ];
  }
}

/** What must not be read past: it stands before anything else. */
function isImportant(caution: string): boolean {
  return /prove dead|cannot be switched off/i.test(caution);
}

function choice<Word extends string>(
  key: string,
  label: string,
  words: Readonly<Record<Word, string>>,
  chosen: Word,
  choose: (word: Word) => void,
): HTMLElement {
  const list = element(
    "select",
    { "data-switch": key },
    ...Object.entries<string>(words).map(([value, text]) =>
      element("option", { value, selected: value === chosen }, text),
    ),
  );
  list.addEventListener("change", () => choose(list.value as Word));
  return element("label", {}, `${label} `, list);
}

function withMode({
  light,
  supply,
}: {
  readonly light?: Mode["light"] | "";
  readonly supply?: Mode["supply"] | "";
}): void {
  say({ is: "mode", mode: { ...(light && { light }), ...(supply && { supply }) } });
}

function outcome(id: string, { devices, open, live, dead }: ShownLive): string {
  if (!devices.some((device) => device.id === id)) return l10n.t("{0} has nothing to open.", id);
  const sources = [...new Set(live.map(({ source }) => source))].join(", ");
  return [
    `${stateOf(id, open.includes(id))}.`,
    l10n.t("Parts are kept live by {0}.", sources || l10n.t("nothing that is written")),
    ...(dead.length > 0 ? [l10n.t("Reached by nothing: {0}. Prove dead.", dead.join(", "))] : []),
  ].join(" ");
}

function stateOf(id: string, isOpen: boolean): string {
  return isOpen ? l10n.t("{0} open", id) : l10n.t("{0} closed", id);
}
