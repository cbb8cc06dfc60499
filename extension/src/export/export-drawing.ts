import { l10n, type QuickPickItem, Uri, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { FileParams } from "../../../language-server/src/drawing-worker/questions";
import type { ChartResult } from "../../../language-server/src/editor/lsp/chart-requests";
import type { DiagramResult, HeadResult } from "../../../language-server/src/editor/lsp/diagram-requests";
import type { DrawingWorker } from "../drawing/drawing-worker";
import { exists, fileName } from "../files";
import { ask } from "../requests";

/** What is written, and how; what is left out is asked. */
export interface ExportWish {
  readonly uri: string;
  readonly design?: string;
  /** `diagram`, or a chart's name; `voltage` is the first of its sort. */
  readonly what?: string;
  readonly conditions?: { readonly irradiance: number; readonly cell: number };
  readonly as?: "svg" | "pdf";
  /** A file that does not exist yet; without it a dialog asks, and asks again before it overwrites. */
  readonly to?: string;
}
interface Format extends QuickPickItem {
  readonly as: "svg" | "pdf";
}

/** Writes a design's diagram, or a chart of it, to a file: the same bytes as `sunwright draw` writes. */
export async function exportDrawing(
  client: BaseLanguageClient,
  worker: DrawingWorker,
  wish: ExportWish,
): Promise<Uri | undefined> {
  const what = wish.what ?? (await pickWhat(client, wish));
  const as = what === undefined ? undefined : (wish.as ?? (await pickFormat(what)));
  if (what === undefined || as === undefined) return undefined;
  const asked = await drawn(client, wish, what, as);
  if (!asked) return undefined;
  const to = wish.to === undefined ? await pickFile(asked, as) : Uri.parse(wish.to);
  if (!to) return undefined;
  if (wish.to !== undefined && (await exists(to)))
    throw new Error(l10n.t("{0} is there already.", fileName(to.toString())));
  await workspace.fs.writeFile(to, await worker.file({ drawn: asked.drawn, as }));
  return to;
}

async function pickWhat(client: BaseLanguageClient, { uri, design }: ExportWish): Promise<string | undefined> {
  const result = await ask<ChartResult>(client, "sunwright/chart", uri, { design, chart: "margins" });
  const items = [
    { label: l10n.t("Diagram"), name: "diagram" },
    ...(result?.charts ?? []).map(({ title, name }) => ({ label: title, description: name, name })),
  ];
  const picked = await window.showQuickPick(items, {
    title: l10n.t("Export"),
    placeHolder: l10n.t("What to write to a file"),
    matchOnDescription: true,
  });
  return picked?.name;
}

async function pickFormat(what: string): Promise<Format["as"] | undefined> {
  const formats: readonly Format[] = [
    { label: "SVG", description: l10n.t("a picture for pages and documents"), as: "svg" },
    {
      label: "PDF",
      description: what === "diagram" ? l10n.t("for paper, on as many sheets as it takes") : l10n.t("for paper"),
      as: "pdf",
    },
  ];
  const picked = await window.showQuickPick(formats, { title: l10n.t("Export"), placeHolder: l10n.t("As what") });
  return picked?.as;
}

interface Asked {
  readonly drawn: FileParams["drawn"];
  readonly entry: string;
  /** The chart's name; undefined for the diagram. */
  readonly chart?: string;
}

/** What is drawn is what the text says now; a text that cannot be read in part would be drawn as it was before. */
async function drawn(
  client: BaseLanguageClient,
  { uri, design, conditions }: ExportWish,
  what: string,
  as: Format["as"],
): Promise<Asked | undefined> {
  if (what === "diagram") {
    const result = await ask<DiagramResult>(client, "sunwright/diagram", uri, { design });
    return result ? { drawn: { diagram: readable(result).diagram }, entry: result.entry } : undefined;
  }
  const forPaper = as === "pdf";
  const result = await ask<ChartResult>(client, "sunwright/chart", uri, { design, chart: what, conditions, forPaper });
  if (!result) return undefined;
  const { chart, entry } = readable(result);
  if (!chart) throw new Error(l10n.t("There is no chart {0} in this design.", what));
  return { drawn: { pages: chart.pages ?? [chart.picture] }, entry, chart: chart.name };
}

function readable<Result extends HeadResult>(result: Result): Result {
  const [first] = result.unread;
  if (first)
    throw new Error(
      l10n.t(
        "{0}, line {1} cannot be read. Mend it first: the drawing would show what it said before.",
        fileName(first.uri),
        first.range.start.line + 1,
      ),
    );
  return result;
}

async function pickFile({ entry, chart }: Asked, as: Format["as"]): Promise<Uri | undefined> {
  const design = Uri.parse(entry);
  const base = design.path.replace(/\.sun$/, "");
  const name = chart === undefined ? base : `${base}-${chart.replaceAll(/[^\w.-]+/g, "-")}`;
  return window.showSaveDialog({
    defaultUri: design.with({ path: `${name}.${as}` }),
    filters: as === "svg" ? { SVG: ["svg"] } : { PDF: ["pdf"] },
    title: l10n.t("Export"),
  });
}
