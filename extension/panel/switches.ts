import type { ModeChoice, ShownLive } from "../src/panel/messages";
import { button, element } from "./dom";
import { say } from "./host";

const lights = { "": "By day and by night", day: "By day", night: "By night" };
const supplies = { "": "With the grid and in an island", grid: "With the grid", island: "In an island" };

/** What stays live with some devices open: what is switched, in which mode, and each source with what it keeps live. */
export class Switches {
  readonly toggle = button("Operate switches", { "aria-pressed": "false" }, () =>
    say({ is: "switching", on: this.shown === undefined }),
  );
  readonly box = element("section", { class: "switches", "aria-label": "What stays live", hidden: true });
  private shown: ShownLive | undefined;
  /** What was last switched, until it is known what came of it. */
  private asked: string | undefined;

  get isOn(): boolean {
    return this.shown !== undefined;
  }

  canOpen(id: string): boolean {
    return this.shown?.devices.some((device) => device.id === id) === true;
  }

  isOpen(id: string): boolean {
    return this.shown?.open.includes(id) === true;
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
      element("h2", {}, `What stays live ${open.length > 0 ? `with ${open.join(", ")} open` : "with nothing open"}`),
      element("p", { class: "caution important" }, cautions.filter(isImportant).join(" ")),
      element(
        "div",
        { class: "modes" },
        choice("Light", lights, mode.light ?? "", (light) => withMode({ ...mode, light })),
        choice("Supply", supplies, mode.supply ?? "", (supply) => withMode({ ...mode, supply })),
        button("Close all", { disabled: open.length === 0 }, () => say({ is: "close-all" })),
      ),
      element(
        "div",
        { class: "devices", role: "group", "aria-label": "Devices that can be opened" },
        ...devices.map(({ id, detail }) => {
          const isOpen = open.includes(id);
          const attributes = { "aria-pressed": String(isOpen), "data-switch": id, title: `${id}: ${detail}` };
          return button(`${id} ${isOpen ? "open" : "closed"}`, attributes, () => this.press(id));
        }),
      ),
      ...(incomplete
        ? [element("p", { class: "remark" }, "The text has errors: nothing here may be taken for dead.")]
        : []),
      element(
        "ul",
        { class: "live" },
        ...live.live.map(({ text, where }) =>
          element("li", {}, element("strong", {}, text), ` keeps live: ${where.join(", ")}`),
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
                  ? "Reached by nothing that could be read: "
                  : "Reached by nothing, dead if wired as written: ",
              ),
              dead.join(", "),
            ),
          ]
        : []),
      ...notCounted.map((words) => element("p", { class: "remark" }, `Traced as closed all the same. ${words}`)),
      ...cautions.filter((words) => !isImportant(words)).map((words) => element("p", { class: "caution" }, words)),
    ];
  }
}

/** What must not be read past: it stands before anything else. */
function isImportant(caution: string): boolean {
  return /prove dead|cannot be switched off/i.test(caution);
}

function choice<Word extends string>(
  label: string,
  words: Readonly<Record<Word, string>>,
  chosen: Word,
  choose: (word: Word) => void,
): HTMLElement {
  const list = element(
    "select",
    { "data-switch": label },
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
  readonly light?: ModeChoice["light"] | "";
  readonly supply?: ModeChoice["supply"] | "";
}): void {
  say({ is: "mode", mode: { ...(light && { light }), ...(supply && { supply }) } });
}

function outcome(id: string, { devices, open, live, dead }: ShownLive): string {
  if (!devices.some((device) => device.id === id)) return `${id} has nothing to open.`;
  const sources = [...new Set(live.map(({ source }) => source))].join(", ");
  const state = open.includes(id) ? "open" : "closed";
  const rest = dead.length > 0 ? ` Reached by nothing: ${dead.join(", ")}. Prove dead.` : "";
  return `${id} ${state}. Parts are kept live by ${sources || "nothing that is written"}.${rest}`;
}
