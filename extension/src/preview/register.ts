import { commands, type Disposable, l10n } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { TextPicture } from "../../../language-server/src/editor/diagram/text-picture";
import type { DrawingWorker } from "../drawing/drawing-worker";
import { type Block, type DrawnBlock, DrawnBlocks } from "./blocks";
import { type Markdown, sunFences } from "./fence";

export interface MarkdownPlugin {
  /** Called by the editor's own Markdown preview. */
  extendMarkdownIt<Library extends Markdown>(markdown: Library): Library;
}

/** Blocks of designs in the editor's Markdown preview. */
export function registerPreview(
  client: BaseLanguageClient,
  worker: DrawingWorker,
): { readonly plugin: MarkdownPlugin; readonly parts: Disposable[] } {
  const blocks = new DrawnBlocks(
    (block, name) => draw(client, worker, block, name),
    () => void commands.executeCommand("markdown.preview.refresh"),
    (error) => l10n.t("This could not be drawn: {0}", error instanceof Error ? error.message : String(error)),
  );
  const words = {
    drawing: l10n.t("drawing …"),
    text: l10n.t("Text of this drawing"),
    unknown: (word: string) =>
      l10n.t('"{0}" means nothing here: chart=NAME draws a chart, code leaves the text.', word),
  };
  return {
    plugin: { extendMarkdownIt: (markdown) => sunFences(markdown, (block) => blocks.find(block), words) },
    parts: [
      blocks,
      client.onNotification("sunwright/designChanged", ({ uris }: { uris?: string[] }) => blocks.changed(uris ?? [])),
    ],
  };
}

async function draw(
  client: BaseLanguageClient,
  worker: DrawingWorker,
  { text, page, chart }: Block,
  name: string,
): Promise<DrawnBlock> {
  const found = await client.sendRequest<TextPicture>("sunwright/textPicture", {
    text,
    uri: `${page ?? "untitled:page"}.sun`,
    chart,
  });
  const { diagram } = found;
  const svg = diagram
    ? await worker.draw({ diagram, name })
    : found.chart && (await worker.chart({ picture: found.chart, name }));
  return {
    ...(svg !== undefined && { svg }),
    marks: (diagram?.marks ?? []).map(({ number, severity, departed, text }) => ({
      number,
      severity: departed ? "departure" : severity,
      text,
    })),
    problems: found.problems.map(({ line, message }) =>
      line === undefined ? message : l10n.t("Line {0}: {1}", line, message),
    ),
    cautions: diagram?.title.cautions ?? [],
    files: found.files,
  };
}
