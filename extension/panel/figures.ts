import * as l10n from "@vscode/l10n";
import type { Row, Table } from "../../language-server/src/drawing/charts/table";
import { button, element } from "./dom";
import { say } from "./host";
import { redraw } from "./redraw";

/** A chart's figures for whoever does not look at pictures; what a row is about can be gone to. */
export class Figures {
  readonly box = element("details", { class: "figures" }, element("summary", {}, l10n.t("Figures as a table")));

  show(tables: readonly Table[], canGo: (id: string) => boolean): void {
    this.box.hidden = tables.length === 0;
    redraw(this.box, () => {
      for (const each of [...this.box.querySelectorAll("table")]) each.remove();
      this.box.append(...tables.map((table) => tableOf(table, canGo)));
    });
  }
}

function tableOf({ caption, columns, rows }: Table, canGo: (id: string) => boolean): HTMLElement {
  return element(
    "table",
    {},
    element("caption", {}, caption),
    element("thead", {}, element("tr", {}, ...columns.map((words) => element("th", { scope: "col" }, words)))),
    element("tbody", {}, ...rows.map((row) => rowOf(row, canGo))),
  );
}

function rowOf({ id, cells: [first = "", ...others] }: Row, canGo: (id: string) => boolean): HTMLElement {
  const name =
    id !== undefined && canGo(id)
      ? button(first, { class: "words", "data-key": `${id} ${first}`, title: l10n.t("Go to its line") }, () =>
          say({ is: "go-to", id }),
        )
      : first;
  return element("tr", {}, element("th", { scope: "row" }, name), ...others.map((words) => element("td", {}, words)));
}
