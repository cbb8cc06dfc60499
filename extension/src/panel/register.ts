import { commands, type Disposable, type ExtensionContext, type WebviewPanel, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { DrawingWorker } from "../drawing/drawing-worker";
import { panelType } from "./diagram-panel";
import { LiveDiagram } from "./live-diagram";
import type { KeptState } from "./messages";

/** The diagram beside the text. */
export function registerPanel(
  context: ExtensionContext,
  client: BaseLanguageClient,
  worker: DrawingWorker,
): Disposable[] {
  const diagram = new LiveDiagram(context, client, worker);
  return [
    diagram,
    commands.registerCommand("sunwright.showDiagram", () => diagram.show()),
    window.registerWebviewPanelSerializer(panelType, {
      deserializeWebviewPanel: async (panel: WebviewPanel, kept: KeptState | undefined) => diagram.restore(panel, kept),
    }),
  ];
}
