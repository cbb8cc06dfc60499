import type { Connection } from "vscode-languageserver";
import type { Conditions } from "../../drawing/charts/current-voltage.js";
import { askedConditions, type ChartAnswer, chartAnswer } from "../diagram/chart-answer.js";
import { type HeadResult, headResult, type PlaceResult, placeResults } from "./diagram-requests.js";
import type { Editor } from "./editor.js";
import { type AboutDesign, answerTo, askedDesign } from "./questions.js";

/** `sunwright/chart`: a chart of a design that a document belongs to, and which charts there are. */
export interface ChartParams extends AboutDesign {
  /** `voltage:S1`; the first of its sort where there is no such one. */
  readonly chart: string;
  /** For current-voltage curves, in W/m² and K; standard test conditions where there are none, or impossible ones. */
  readonly conditions?: Partial<Conditions>;
  /** Its pages on paper as well. */
  readonly forPaper?: boolean;
}
export interface ChartResult extends HeadResult, Pick<ChartAnswer, "title" | "charts" | "chart"> {
  readonly places: readonly PlaceResult[];
}

export function addChartRequests(connection: Connection, editor: Editor): void {
  const { view, positions, severities } = editor;
  answerTo(
    connection,
    editor,
    "sunwright/chart",
    (uri, { chart, conditions: given, forPaper, ...about }: ChartParams): ChartResult => {
      const conditions = askedConditions(given);
      const wish = { chart: String(chart), ...(conditions && { conditions }), ...(forPaper && { forPaper }) };
      const answer = chartAnswer(view, uri, askedDesign(about), wish, severities);
      const { title, charts, places } = answer;
      return {
        ...headResult(answer, positions),
        title,
        charts,
        ...(answer.chart && { chart: answer.chart }),
        places: placeResults(places, positions),
      };
    },
  );
}
