import { l10n } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { ChartResult } from "../../../language-server/src/editor/lsp/chart-requests";
import { ask } from "../requests";
import { type PanelView, type ShownChart, type ShownConditions, type Tab, tabNames } from "./messages";

const zero = 273.15;

export function chartName(tab: Tab, site: string): string {
  return `${tabNames[tab]}: ${site}`;
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
