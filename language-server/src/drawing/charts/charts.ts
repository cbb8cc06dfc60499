import type { Assessment } from "../../assessment/assessment.js";
import type { Place } from "../../place.js";
import type { Picture } from "../picture.js";
import { text } from "../picture.js";
import { textWidth } from "../text-width.js";
import { type Conditions, currentVoltagePlot } from "./current-voltage.js";
import { dropPicture, dropTable } from "./drop.js";
import { marginsOf, marginsTable } from "./margins.js";
import { marginsPages, marginsPicture } from "./margins-picture.js";
import { type Plot, plotPicture } from "./plot.js";
import { stringVoltagePlot } from "./string-voltage.js";
import { plotTables, type Table } from "./table.js";

export type ChartSort = "voltage" | "curve" | "margins" | "drop";

/** One chart that can be drawn of a design. */
export interface Chart {
  /** `voltage:S1`, `curve:INV.pv1`, `margins`, `drop`: how it is asked for. */
  readonly name: string;
  readonly sort: ChartSort;
  /** The string or tracker it is about; undefined for those of the whole design. */
  readonly about?: string;
  readonly title: string;
  /** Drawn when asked for. `conditions` are for current-voltage curves. */
  readonly picture: (conditions?: Conditions) => Picture;
  /** The same for paper, where one page does not hold it. */
  readonly pages?: () => readonly Picture[];
  /** The same in figures. */
  readonly tables: (conditions?: Conditions) => readonly Table[];
  /** Where its parts are written that are no items or runs, by the ids of their groups. */
  readonly places?: () => readonly ChartPlace[];
}
export interface ChartPlace {
  readonly id: string;
  readonly place: Place;
}

/** A chart on as many pages as it takes. */
export function pagesOf({ picture, pages }: Chart, conditions?: Conditions): readonly Picture[] {
  return pages?.() ?? [picture(conditions)];
}

/** Every chart of a design, in the order of its text. */
export function chartsOf(assessment: Assessment): Chart[] {
  const voltages: Chart[] = [];
  const curves: Chart[] = [];
  for (const { arrays } of assessment.zones)
    for (const array of arrays) {
      for (const path of array.strings) {
        const { id } = path.string;
        if (voltages.some((known) => known.about === id)) continue;
        const title = `${id}: string voltage against cell temperature`;
        voltages.push(plotted("voltage", id, title, () => stringVoltagePlot(assessment, path, array)));
      }
      if (!array.tracker || array.strings.length === 0) continue;
      const title = `${array.id}: current against voltage`;
      curves.push(plotted("curve", array.id, title, (conditions) => currentVoltagePlot(assessment, array, conditions)));
    }
  return [
    ...voltages,
    ...curves,
    {
      name: "margins",
      sort: "margins",
      title: "How much of each limit is used",
      picture: () => marginsPicture(assessment),
      pages: () => marginsPages(assessment),
      tables: () => [marginsTable(assessment)],
      places: () => marginsOf(assessment).margins,
    },
    {
      name: "drop",
      sort: "drop",
      title: "Voltage drop along each way",
      picture: () => dropPicture(assessment),
      tables: () => [dropTable(assessment)],
    },
  ];
}

function plotted(
  sort: ChartSort,
  about: string,
  title: string,
  plot: (conditions?: Conditions) => Plot | string,
): Chart {
  return {
    name: `${sort}:${about}`,
    sort,
    about,
    title,
    picture: (conditions) => drawn(title, plot(conditions)),
    tables: (conditions) => {
      const known = plot(conditions);
      return typeof known === "string" ? [] : plotTables(known);
    },
  };
}

/** A plot, or the sentence that says what it lacks. */
function drawn(title: string, plot: Plot | string): Picture {
  if (typeof plot !== "string") return plotPicture(plot);
  const words = `Not drawn, ${plot}.`;
  return {
    width: Math.max(420, textWidth(words, 11) + 40),
    height: 84,
    title,
    description: words,
    shapes: [text(20, 32, title, { size: 15, bold: true }), text(20, 58, words, { size: 11 })],
  };
}
