import { l10n } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { ChartResult } from "../../../language-server/src/editor/lsp/chart-requests";
import { ask } from "../requests";
import type { PanelView, ShownChart, ShownConditions, Tab } from "./messages";

const zero = 273.15;

/** What the panel is called while it shows a view of a site. */
export function titleOf(tab: Tab, site: string): string {
  switch (tab) {
    case "diagram":
      return l10n.t("Diagram: {0}", site);
    case "voltage":
      return l10n.t("String voltage: {0}", site);
    case "curve":
      return l10n.t("Current–voltage: {0}", site);
    case "margins":
      return l10n.t("Margins: {0}", site);
    case "drop":
      return l10n.t("Voltage drop: {0}", site);
  }
}

/** Conditions as the server takes them. */
export function askedConditions({ irradiance, cell }: ShownConditions): {
  readonly irradiance: number;
  readonly cell: number;
} {
  return { irradiance, cell: cell + zero };
}

export function askChart(
  client: BaseLanguageClient,
  uri: string,
  design: string | undefined,
  { tab, chosen, conditions }: PanelView,
): Promise<ChartResult | null> {
  return ask<ChartResult>(client, "sunwright/chart", uri, {
    design,
    chart: chosen[tab] ?? tab,
    conditions: askedConditions(conditions),
  });
}

export function shownChart(
  { chart, charts, places }: ChartResult,
  { tab, chosen }: PanelView,
  svg: string | undefined,
): ShownChart {
  const wish = chosen[tab];
  const names = charts.flatMap(({ name, sort, about }) =>
    sort === tab && about !== undefined ? [{ name, about }] : [],
  );
  const words = wordsFor(tab, chart?.name, wish);
  return {
    tab,
    names,
    ...(chart && { name: chart.name }),
    ...(svg !== undefined && { svg }),
    tables: chart?.tables ?? [],
    places: places.map(({ id }) => id),
    ...(words !== undefined && { words }),
  };
}

/** Why there is nothing to show, or something else than was chosen. */
function wordsFor(tab: Tab, name: string | undefined, wish: string | undefined): string | undefined {
  if (name === undefined)
    return tab === "curve"
      ? l10n.t("No string is wired to a tracker of an inverter: there is no curve yet.")
      : l10n.t("No string is declared: there is no voltage to draw yet.");
  if (wish === undefined || wish === name) return undefined;
  return l10n.t("{0} is not in the design at present: {1} is shown.", aboutOf(wish), aboutOf(name));
}

function aboutOf(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}
