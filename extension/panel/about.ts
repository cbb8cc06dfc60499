import * as l10n from "@vscode/l10n";
import type { Mark } from "../../language-server/src/drawing/diagram";
import type { ShownDesign, ShownHead } from "../src/panel/messages";
import { button, element } from "./dom";
import { say } from "./host";
import { redraw } from "./redraw";

/** The words around the picture: which design it is, its verdict, and what was found. */
export class About {
  readonly head = element("header", { class: "about" });
  readonly notes = element("div", { class: "notes" });
  readonly findings = element("section", { class: "findings", "aria-label": l10n.t("Findings") });

  show(design: ShownDesign): void {
    const { cautions, marks, isEmpty } = design;
    this.showHead(design);
    if (isEmpty)
      this.notes.prepend(
        element(
          "p",
          { class: "empty" },
          l10n.t(
            "Nothing is declared yet that could be drawn. A string, an inverter or a supply appears here as soon as its line is written.",
          ),
        ),
      );
    redraw(this.findings, () =>
      this.findings.replaceChildren(
        element("h2", {}, marks.length === 0 ? l10n.t("Nothing found") : l10n.t("Findings")),
        element("ol", {}, ...marks.map(finding)),
        ...cautions.map((words) => element("p", { class: "caution" }, words)),
      ),
    );
  }

  showHead(design: ShownHead): void {
    const { site, ruleSet, verdict, whatIf, unread } = design;
    redraw(this.head, () =>
      this.head.replaceChildren(
        element("div", { class: "site" }, element("h1", {}, site), ...choice(design)),
        element("p", { class: "verdict" }, verdict),
        element("p", { class: "rules" }, ruleSet),
      ),
    );
    this.notes.replaceChildren(
      ...unread.map((where) =>
        element("p", { class: "remark unread" }, l10n.t("{0} cannot be read: what it last said is drawn.", where)),
      ),
      ...whatIf.map((words) =>
        element("p", { class: "remark what-if" }, l10n.t("What if {0}. No file says so.", words)),
      ),
    );
  }

  nothing(words: string): void {
    this.head.replaceChildren(element("p", { class: "empty" }, words));
    this.notes.replaceChildren();
    this.findings.replaceChildren();
  }
}

function choice({ designs, entry }: ShownHead): HTMLElement[] {
  if (designs.length < 2) return [];
  const list = element(
    "select",
    { "aria-label": l10n.t("Design: this file belongs to several") },
    ...designs.map((each) => element("option", { value: each.entry, selected: each.entry === entry }, each.name)),
  );
  list.addEventListener("change", () => say({ is: "choose", entry: list.value }));
  return [list];
}

function finding({ number, at, severity, departed, rule, text }: Mark): HTMLElement {
  const sort = departed ? "departure" : severity;
  const key = `${rule} ${at}`;
  return element(
    "li",
    { class: sort },
    element("span", { class: "badge", "aria-hidden": "true" }, String(number)),
    element("span", { class: "sort" }, `${sortWords()[sort]} ${number}`),
    " ",
    at === undefined
      ? element("span", {}, text)
      : button(text, { class: "words", "data-key": `text ${key}` }, () => say({ is: "go-to", id: at })),
    " ",
    button(rule, { class: "rule", "data-key": `rule ${key}`, title: l10n.t("Show the page of this rule") }, () =>
      say({ is: "rule", rule }),
    ),
  );
}

function sortWords(): Readonly<Record<Mark["severity"] | "departure", string>> {
  return {
    error: l10n.t("error"),
    warning: l10n.t("warning"),
    note: l10n.t("note"),
    departure: l10n.t("departure"),
  };
}
