// Before anything is said: what follows asks for words while it is loaded.
import "./words";
import * as l10n from "@vscode/l10n";
import {
  firstView,
  type PanelView,
  type ShownChart,
  type ShownDesign,
  type ShownHead,
  type ToPage,
} from "../src/panel/messages";
import { About } from "./about";
import { Card } from "./card";
import { ChartView } from "./chart-view";
import { button, element } from "./dom";
import { keep, kept, onMessage, say } from "./host";
import { keysId, Picture } from "./picture";
import { Stage } from "./stage";
import { Switches } from "./switches";
import { Tabs } from "./tabs";

const frame = element("div", { class: "stage" });
const drawing = { id: "view-diagram", role: "tabpanel", "aria-labelledby": "tab-diagram" };
const stage = new Stage(frame, kept().seen ?? "start", (seen) => keep({ seen }));
const about = new About();
const switches = new Switches();
const card = new Card(
  (id) => picture.place(id),
  (id) => picture.focus(id),
);
const picture = new Picture(stage, {
  press: (id) => (switches.canOpen(id) ? operate(id) : say({ is: "go-to", id })),
  goTo: (id) => say({ is: "go-to", id }),
  lookAt: (id) => card.lookAt(id),
  key: pressed,
});
const news = element("p", { class: "news", "aria-live": "polite" });
const keys = element(
  "p",
  { id: keysId, class: "heard" },
  l10n.t(
    "Arrow keys go along the wires, Enter goes to the text, O opens or closes a switch, D goes into the details shown beside it and Escape back, Escape leaves.",
  ),
);
const tools = element(
  "div",
  { class: "tools", role: "group", "aria-label": l10n.t("Picture") },
  switches.toggle,
  button("−", { "aria-label": l10n.t("Zoom out"), title: l10n.t("Zoom out (−)") }, () => stage.zoom(-1)),
  button("+", { "aria-label": l10n.t("Zoom in"), title: l10n.t("Zoom in (+)") }, () => stage.zoom(1)),
  button(l10n.t("Fit"), { title: l10n.t("Show all of it (0)") }, () => stage.fit()),
);
let view = kept().view ?? firstView;
const chart = new ChartView(view, turn);
const tabs = new Tabs((tab) => chart.turn({ ...view, tab }));
const views = element(
  "div",
  { class: "views" },
  tabs.list,
  button(l10n.t("Export …"), { title: l10n.t("Write what is shown to a file") }, () => say({ is: "export" })),
);
const beside = element("div", { class: "beside" }, switches.box, about.findings);

document
  .getElementById("panel")!
  .append(
    about.head,
    tools,
    views,
    about.notes,
    element("div", { class: "diagram", ...drawing }, keys, frame),
    chart.box,
    beside,
    card.box,
    news,
  );
look(view);

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || isField(event.target)) return;
  if (event.key === "Escape") card.hide();
  else if (event.key === "+" || event.key === "=") stage.zoom(1);
  else if (event.key === "-") stage.zoom(-1);
  else if (event.key === "0") stage.fit();
});

function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLSelectElement || target instanceof HTMLInputElement;
}

/** A key on a thing of the picture. */
function pressed(key: string, id: string): boolean {
  if (key === "o" || (key === " " && switches.canOpen(id))) operate(id);
  else if (key === "d") card.enter(id);
  else if (key === "Escape" && !card.hide()) leave();
  else return key === "Escape";
  return true;
}

/** What comes of it is seen where the card would lie. */
function operate(id: string): void {
  card.hide();
  switches.press(id);
}

/** Out of the picture, to the first of its buttons. */
function leave(): void {
  tools.querySelector("button")?.focus();
}

/** Which view is seen; the others stay as they are. */
function look({ tab }: PanelView): void {
  document.body.dataset.view = tab === "diagram" ? "diagram" : "chart";
  tabs.show(tab);
}

function turn(next: PanelView): void {
  view = next;
  keep({ view });
  card.hide();
  look(view);
  say({ is: "view", view });
}

function showHead(head: ShownHead): void {
  keep({ uri: head.uri, entry: head.entry });
  document.body.classList.toggle("is-unread", head.unread.length > 0);
}

function showChart(head: ShownHead, shown: ShownChart): void {
  // It may have been on its way while another view was chosen.
  if (shown.tab !== view.tab) return;
  showHead(head);
  about.showHead(head);
  chart.show(shown);
  announce(`${head.site}: ${head.verdict}`);
}

function announce(words: string): void {
  if (news.textContent !== words) news.textContent = words;
}

function show(design: ShownDesign, svg: string): void {
  const { entry = design.entry } = kept();
  if (entry !== design.entry) stage.restart();
  showHead(design);
  const switched = switches.show(design.live);
  about.show(design);
  if (design.isEmpty) picture.clear();
  else picture.show(svg, design.joins);
  announce(switched ?? `${design.site}: ${design.verdict}`);
  performance.mark("sunwright-drawn");
}

function hear(message: ToPage): void {
  switch (message.is) {
    case "design":
      show(message.design, message.svg);
      break;
    case "chart":
      showChart(message.head, message.chart);
      break;
    case "nothing":
      about.nothing(message.words);
      picture.clear();
      break;
    case "cursor":
      picture.mark(message.id);
      break;
    case "told":
      card.show(message.id, message.html);
      break;
  }
}

// Server and drawing worker may have to start first.
about.nothing(l10n.t("Reading the design …"));
onMessage(hear);
say({ is: "ready" });
