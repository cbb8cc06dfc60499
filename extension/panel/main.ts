import type { ToPage } from "../src/panel/messages";
import { About } from "./about";
import { Card } from "./card";
import { button, element } from "./dom";
import { keep, kept, onMessage, say } from "./host";
import { Picture } from "./picture";
import { Stage } from "./stage";

const frame = element("div", { class: "stage", role: "group", "aria-label": "Single-line diagram" });
const stage = new Stage(frame, kept().view, (view) => keep({ view }));
const about = new About();
const card = new Card((id) => picture.place(id));
const picture = new Picture(stage, {
  goTo: (id) => say({ is: "go-to", id }),
  lookAt: (id) => card.lookAt(id),
  key: (key) => key === "Escape" && leave(),
});
const news = element("p", { class: "news", "aria-live": "polite" });
const tools = element(
  "div",
  { class: "tools", role: "toolbar", "aria-label": "Picture" },
  button("−", { "aria-label": "Zoom out", title: "Zoom out (−)" }, () => stage.zoom(-1)),
  button("+", { "aria-label": "Zoom in", title: "Zoom in (+)" }, () => stage.zoom(1)),
  button("Fit", { title: "Show all of it (0)" }, () => stage.fit()),
);

document.getElementById("panel")!.append(about.head, about.notes, tools, frame, about.findings, card.box, news);

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
  if (event.key === "Escape") card.hide();
  else if (event.key === "+" || event.key === "=") stage.zoom(1);
  else if (event.key === "-") stage.zoom(-1);
  else if (event.key === "0") stage.fit();
});

/** Out of the picture, to the first of its buttons. */
function leave(): boolean {
  card.hide();
  tools.querySelector("button")?.focus();
  return true;
}

function hear(message: ToPage): void {
  switch (message.is) {
    case "design": {
      const { design, svg } = message;
      keep({ uri: design.uri, entry: design.entry });
      document.body.classList.toggle("is-unread", design.unread.length > 0);
      about.show(design);
      picture.show(svg, design.joins);
      news.textContent = `${design.site}: ${design.verdict}`;
      performance.mark("sunwright-drawn");
      break;
    }
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
