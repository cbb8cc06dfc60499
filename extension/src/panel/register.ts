import { commands, type Disposable, type ExtensionContext, type WebviewPanel, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { DrawingWorker, type RunningWorker } from "../drawing/drawing-worker";
import { panelType } from "./diagram-panel";
import { LiveDiagram } from "./live-diagram";
import type { KeptState } from "./messages";

/** The diagram beside the text. */
export function registerPanel(
  context: ExtensionContext,
  client: BaseLanguageClient,
  startWorker: () => RunningWorker,
): Disposable[] {
  const worker = new DrawingWorker(startWorker);
  const diagram = new LiveDiagram(context, client, worker);
  return [
    worker,
    diagram,
    commands.registerCommand("sunwright.showDiagram", () => diagram.show()),
    window.registerWebviewPanelSerializer(panelType, {
      deserializeWebviewPanel: async (panel: WebviewPanel, kept: KeptState | undefined) => diagram.restore(panel, kept),
    }),
  ];
}
