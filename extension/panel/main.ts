import type { ShownDesign, ToPage } from "../src/panel/messages";
import { About } from "./about";
import { Card } from "./card";
import { button, element } from "./dom";
import { keep, kept, onMessage, say } from "./host";
import { Picture } from "./picture";
import { Stage } from "./stage";
import { Switches } from "./switches";

const frame = element("div", { class: "stage", role: "group", "aria-label": "Single-line diagram" });
const stage = new Stage(frame, kept().seen ?? "start", (seen) => keep({ seen }));
const about = new About();
const switches = new Switches();
const card = new Card((id) => picture.place(id));
const picture = new Picture(stage, {
  press: (id) => (switches.canOpen(id) ? switches.press(id) : say({ is: "go-to", id })),
  goTo: (id) => say({ is: "go-to", id }),
  lookAt: (id) => card.lookAt(id),
  key: pressed,
});
const news = element("p", { class: "news", "aria-live": "polite" });
const tools = element(
  "div",
  { class: "tools", role: "toolbar", "aria-label": "Picture" },
  switches.toggle,
  button("−", { "aria-label": "Zoom out", title: "Zoom out (−)" }, () => stage.zoom(-1)),
  button("+", { "aria-label": "Zoom in", title: "Zoom in (+)" }, () => stage.zoom(1)),
  button("Fit", { title: "Show all of it (0)" }, () => stage.fit()),
);
const beside = element("div", { class: "beside" }, switches.box, about.findings);

document.getElementById("panel")!.append(about.head, about.notes, tools, frame, beside, card.box, news);

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
  if (event.key === "Escape") card.hide();
  else if (event.key === "+" || event.key === "=") stage.zoom(1);
  else if (event.key === "-") stage.zoom(-1);
  else if (event.key === "0") stage.fit();
});

/** A key on a thing of the picture. */
function pressed(key: string, id: string): boolean {
  if (key === "o" || (key === " " && switches.canOpen(id))) switches.press(id);
  else if (key === "Escape") leave();
  else return false;
  return true;
}

/** Out of the picture, to the first of its buttons. */
function leave(): void {
  card.hide();
  tools.querySelector("button")?.focus();
}

function show(design: ShownDesign, svg: string): void {
  const { entry = design.entry } = kept();
  if (entry !== design.entry) stage.restart();
  keep({ uri: design.uri, entry: design.entry });
  document.body.classList.toggle("is-unread", design.unread.length > 0);
  const switched = switches.show(design.live);
  about.show(design);
  if (design.isEmpty) picture.clear();
  else picture.show(svg, design.joins, (id) => (switches.canOpen(id) ? switches.isOpen(id) : undefined));
  const words = switched ?? `${design.site}: ${design.verdict}`;
  if (news.textContent !== words) news.textContent = words;
  performance.mark("sunwright-drawn");
}

function hear(message: ToPage): void {
  switch (message.is) {
    case "design":
      show(message.design, message.svg);
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

onMessage(hear);
say({ is: "ready" });
