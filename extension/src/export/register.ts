import { commands, type Disposable, l10n, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { DrawingWorker } from "../drawing/drawing-worker";
import { fileName } from "../files";
import { addressOf, designEditor } from "../requests";
import { type ExportWish, exportDrawing } from "./export-drawing";

/** Writing what is drawn to a file. A key or another command may name what is otherwise asked. */
export function registerExport(client: BaseLanguageClient, worker: DrawingWorker): Disposable {
  return commands.registerCommand("sunwright.exportDrawing", async (given?: Partial<ExportWish>) => {
    const uri = given?.uri ?? designUri(client);
    if (uri === undefined) return;
    try {
      const written = await exportDrawing(client, worker, { ...given, uri });
      if (written) void window.showInformationMessage(l10n.t("Written: {0}", fileName(written.toString())));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      void window.showErrorMessage(l10n.t("Nothing was written. {0}", why));
    }
  });
}

function designUri(client: BaseLanguageClient): string | undefined {
  const editor = designEditor();
  return editor && addressOf(client, editor.document);
}
