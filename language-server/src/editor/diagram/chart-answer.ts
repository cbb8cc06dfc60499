import type { Severities } from "../../assessment/severities.js";
import { type Chart, chartsOf, pagesOf } from "../../drawing/charts/charts.js";
import { type Conditions, possibleConditions } from "../../drawing/charts/current-voltage.js";
import type { Table } from "../../drawing/charts/table.js";
import type { TitleBlock } from "../../drawing/diagram.js";
import type { Picture } from "../../drawing/picture.js";
import { titleBlockOf } from "../../drawing/title-block.js";
import { absolute } from "../../place.js";
import type { WorkspaceView } from "../workspace-view.js";
import { type DesignHead, designHead } from "./answer.js";
import { type WrittenAt, writtenPlaces } from "./places.js";

export interface ChartAnswer extends DesignHead {
  readonly title: TitleBlock;
  /** Every chart that there is of the design. */
  readonly charts: readonly ChartName[];
  /** The one that was asked for; undefined where there is none of its sort. */
  readonly chart?: DrawnChart;
  /** Where its parts are written, by the ids of their groups and rows. */
  readonly places: readonly WrittenAt[];
}
export type ChartName = Pick<Chart, "name" | "sort" | "about" | "title">;

/** A chart as plain data: as a picture, and the same in figures. */
export interface DrawnChart extends ChartName {
  readonly picture: Picture;
  readonly tables: readonly Table[];
  /** The same for paper, where that was asked for. */
  readonly pages?: readonly Picture[];
}

export interface ChartWish {
  /** `voltage:S1`; where there is no such one, or no name behind the sort, the first of its sort. */
  readonly chart: string;
  readonly conditions?: Conditions;
  readonly forPaper?: boolean;
}

/** A chart of one of the designs that a file belongs to. */
export function chartAnswer(
  view: WorkspaceView,
  uri: string,
  wanted: string | undefined,
  { chart: name, conditions, forPaper }: ChartWish,
  severities: (entry: string) => Severities,
): ChartAnswer {
  const head = designHead(view, uri, wanted, severities);
  const assessment = view.assessment(head.entry);
  const charts = chartsOf(assessment);
  const [sort] = name.split(":");
  const chart = charts.find((each) => each.name === name) ?? charts.find((each) => each.sort === sort);
  const own = (chart?.places?.() ?? []).filter(({ place }) => view.isLive(place));
  return {
    ...head,
    title: titleBlockOf(assessment),
    charts: charts.map(nameOf),
    ...(chart && {
      chart: {
        ...nameOf(chart),
        picture: chart.picture(conditions),
        tables: chart.tables(conditions),
        ...(forPaper && { pages: pagesOf(chart, conditions) }),
      },
    }),
    places: [
      ...own.map(({ id, place }) => ({ id, name: absolute(place), whole: absolute(place) })),
      ...writtenPlaces(assessment.design, (place) => view.isLive(place)),
    ],
  };
}

function nameOf({ name, sort, about, title }: Chart): ChartName {
  return { name, sort, title, ...(about !== undefined && { about }) };
}

/** Conditions as they come over the wire; undefined where nothing can be under them. */
export function askedConditions(given: Partial<Conditions> | undefined): Conditions | undefined {
  const { irradiance, cell } = given ?? {};
  if (!isWithin(irradiance, possibleConditions.irradiance) || !isWithin(cell, possibleConditions.cell))
    return undefined;
  return { irradiance, cell };
}

function isWithin(value: unknown, { from, to }: { readonly from: number; readonly to: number }): value is number {
  return typeof value === "number" && value >= from && value <= to;
}
