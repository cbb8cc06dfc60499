import * as l10n from "@vscode/l10n";
import type { PanelView, ShownChart } from "../src/panel/messages";
import { Conditions } from "./conditions";
import { element, hush } from "./dom";
import { Figures } from "./figures";
import { say } from "./host";

const legibleScale = 0.8;

/** One chart with what can be chosen of it, and its figures. */
export class ChartView {
  private readonly chooser = element("div", { class: "chooser" });
  private readonly words = element("p", { class: "words-only", role: "status" });
  private readonly picture = element("div", { class: "chart-picture", role: "group", "aria-label": l10n.t("Chart") });
  private readonly figures = new Figures();
  private readonly conditions: Conditions;
  readonly box: HTMLElement;
  /** The one bar that the Tab key comes to. */
  private current: string | undefined;

  constructor(
    private view: PanelView,
    private readonly choose: (view: PanelView) => void,
  ) {
    this.conditions = new Conditions(view.conditions, (conditions) => this.turn({ ...this.view, conditions }));
    this.box = element(
      "section",
      { class: "chart", id: "view-chart", role: "tabpanel" },
      this.chooser,
      this.conditions.box,
      this.words,
      this.picture,
      this.figures.box,
    );
    this.look(view);
    this.picture.addEventListener("click", ({ target }) => this.goTo(idOf(target)));
    this.picture.addEventListener("keydown", (event) => this.press(event));
  }

  turn(view: PanelView): void {
    this.look(view);
    this.choose(view);
  }

  private look(view: PanelView): void {
    this.view = view;
    this.box.setAttribute("aria-labelledby", `tab-${view.tab}`);
    this.conditions.box.hidden = view.tab !== "curve";
  }

  show({ tab, names, name, svg, tables, places, words }: ShownChart): void {
    const known = new Set(places);
    this.showChooser(tab, names, name);
    this.words.textContent = words ?? "";
    this.words.hidden = words === undefined;
    const hadFocus = this.picture.contains(document.activeElement);
    this.picture.replaceChildren(...(svg === undefined ? [] : [this.prepared(svg, known)]));
    if (hadFocus) this.stop()?.focus();
    this.figures.show(tables, (id) => known.has(id));
  }

  private showChooser(tab: ShownChart["tab"], names: ShownChart["names"], name: string | undefined): void {
    const hadFocus = this.chooser.contains(document.activeElement);
    this.chooser.hidden = names.length === 0;
    const list = element(
      "select",
      {},
      ...names.map((each) => element("option", { value: each.name, selected: each.name === name }, each.about)),
    );
    list.addEventListener("change", () =>
      this.turn({ ...this.view, chosen: { ...this.view.chosen, [tab]: list.value } }),
    );
    this.chooser.replaceChildren(
      element("label", {}, tab === "curve" ? l10n.t("Tracker") : l10n.t("String"), " ", list),
    );
    if (hadFocus) list.focus();
  }

  /** What leads to a line can be pressed and walked among. */
  private prepared(text: string, known: ReadonlySet<string>): SVGSVGElement {
    const parsed = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    const svg = document.importNode(parsed as unknown as SVGSVGElement, true);
    // Smaller than this its words cannot be read: then it is moved to and fro.
    svg.style.minWidth = `${svg.width.baseVal.value * legibleScale}px`;
    this.picture.removeAttribute("tabindex");
    const stops = [...svg.querySelectorAll<SVGGElement>("[data-id]")].filter(({ dataset }) =>
      known.has(dataset.id ?? ""),
    );
    if (stops.length > 0) svg.setAttribute("role", "group");
    // Without a stop inside, keys could not move what is wider than the panel.
    else this.picture.tabIndex = 0;
    if (!stops.some(({ dataset }) => dataset.id === this.current)) this.current = stops[0]?.dataset.id;
    for (const stop of stops) {
      // What holds other stops cannot be a button: its inside would be passed over.
      stop.setAttribute("role", stop.querySelector("[data-id]") ? "group" : "button");
      stop.setAttribute("tabindex", stop.dataset.id === this.current ? "0" : "-1");
    }
    hush(svg);
    return svg;
  }

  private press(event: KeyboardEvent): void {
    const stops = [...this.picture.querySelectorAll<SVGGElement>("[tabindex]")];
    const at = stops.indexOf(document.activeElement as Element as SVGGElement);
    if (at < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Enter" || event.key === " ") this.goTo(idOf(event.target));
    else {
      const next = { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: stops.length - 1 }[event.key];
      const stop = next === undefined ? undefined : stops[next];
      if (next === undefined) return;
      if (stop) {
        stops[at]!.setAttribute("tabindex", "-1");
        stop.setAttribute("tabindex", "0");
        this.current = stop.dataset.id;
        stop.focus();
      }
    }
    event.preventDefault();
    event.stopPropagation();
  }

  private stop(): SVGGElement | null {
    return this.picture.querySelector<SVGGElement>("[tabindex='0']");
  }

  private goTo(id: string | undefined): void {
    if (id !== undefined) say({ is: "go-to", id });
  }
}

function idOf(target: EventTarget | null): string | undefined {
  const found = target instanceof Element ? target.closest("[data-id][tabindex]") : null;
  return found?.getAttribute("data-id") ?? undefined;
}
