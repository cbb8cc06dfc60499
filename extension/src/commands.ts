import { commands, type Disposable, type ExtensionContext, Uri } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { DrawingWorker } from "./drawing/drawing-worker";
import { registerExport } from "./export/register";
import { registerGuided } from "./guided/register";
import { registerPanel } from "./panel/register";
import { registerRenameAt } from "./rename-at";
import { VerdictItem } from "./status/verdict-item";
import { registerSwitching } from "./switching";
import { WhatIf } from "./what-if";

/** Commands that are the same in the desktop and the browser. */
export function registerCommands(
  context: ExtensionContext,
  client: BaseLanguageClient,
  drawing: DrawingWorker,
): Disposable[] {
  return [
    new WhatIf(client),
    new VerdictItem(client),
    ...registerGuided(client),
    ...registerSwitching(client),
    registerRenameAt(),
    ...registerPanel(context, client, drawing),
    registerExport(client, drawing),
    commands.registerCommand("sunwright.restartServer", async () => {
      // A server that does not answer is started anew all the same.
      await client.stop().catch(() => undefined);
      await client.start();
    }),
    commands.registerCommand("sunwright.showReference", () =>
      commands.executeCommand("markdown.showPreview", Uri.joinPath(context.extensionUri, "docs", "language.md")),
    ),
  ];
}
