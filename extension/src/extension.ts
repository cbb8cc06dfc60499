import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, type ServerOptions, TransportKind } from "vscode-languageclient/node";
import { clientOptions } from "./client-options";
import { registerCommands } from "./commands";
import { DrawingWorker } from "./drawing/drawing-worker";
import { startNodeWorker } from "./drawing/node-worker";
import { type MarkdownPlugin, registerPreview } from "./preview/register";

let client: LanguageClient | undefined;

/** Desktop: the server is a process of its own, so that a heavy file never makes typing wait. */
export function activate(context: ExtensionContext): MarkdownPlugin {
  const module = Uri.joinPath(context.extensionUri, "dist", "server.cjs").fsPath;
  const server: ServerOptions = {
    run: { module, transport: TransportKind.ipc },
    debug: { module, transport: TransportKind.ipc, options: { execArgv: ["--nolazy", "--inspect=6009"] } },
  };
  client = new LanguageClient("sunwright", "Sunwright", server, clientOptions(context));
  const drawing = new DrawingWorker(() => startNodeWorker(context));
  const { plugin, parts } = registerPreview(client, drawing);
  context.subscriptions.push(drawing, ...parts, ...registerCommands(context, client, drawing));
  // Whoever opens a page of Markdown does not wait for it; the client itself tells when it cannot be started.
  client.start().catch(() => undefined);
  return plugin;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
