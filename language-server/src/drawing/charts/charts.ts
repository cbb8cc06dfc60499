import type { Assessment } from "../../assessment/assessment.js";
import type { Picture } from "../picture.js";
import { text } from "../picture.js";
import { textWidth } from "../text-width.js";
import { type Conditions, currentVoltagePlot } from "./current-voltage.js";
import { dropPicture } from "./drop.js";
import { marginsPicture } from "./margins.js";
import { type Plot, plotPicture } from "./plot.js";
import { stringVoltagePlot } from "./string-voltage.js";

/** One chart that can be drawn of a design. */
export interface Chart {
  /** `voltage:S1`, `curve:INV.pv1`, `margins`, `drop`: how it is asked for. */
  readonly name: string;
  readonly title: string;
  /** Drawn when asked for. `conditions` are for current-voltage curves. */
  readonly picture: (conditions?: Conditions) => Picture;
}

/** Every chart of a design, in the order of its text. */
export function chartsOf(assessment: Assessment): Chart[] {
  const voltages: Chart[] = [];
  const curves: Chart[] = [];
  for (const { arrays } of assessment.zones)
    for (const array of arrays) {
      for (const path of array.strings) {
        const name = `voltage:${path.string.id}`;
        if (voltages.some((known) => known.name === name)) continue;
        const title = `${path.string.id}: string voltage against cell temperature`;
        voltages.push({ name, title, picture: () => drawn(title, stringVoltagePlot(assessment, path, array)) });
      }
      if (!array.tracker || array.strings.length === 0) continue;
      const title = `${array.id}: current against voltage`;
      curves.push({
        name: `curve:${array.id}`,
        title,
        picture: (conditions) => drawn(title, currentVoltagePlot(assessment, array, conditions)),
      });
    }
  return [
    ...voltages,
    ...curves,
    { name: "margins", title: "How much of each limit is used", picture: () => marginsPicture(assessment) },
    { name: "drop", title: "Voltage drop along each way", picture: () => dropPicture(assessment) },
  ];
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
