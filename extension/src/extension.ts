import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, type ServerOptions, TransportKind } from "vscode-languageclient/node";
import { clientOptions } from "./client-options";
import { registerCommands } from "./commands";
import { startNodeWorker } from "./drawing/node-worker";

let client: LanguageClient | undefined;

/** Desktop: the server is a process of its own, so that a heavy file never makes typing wait. */
export async function activate(context: ExtensionContext): Promise<void> {
  const module = Uri.joinPath(context.extensionUri, "dist", "server.cjs").fsPath;
  const server: ServerOptions = {
    run: { module, transport: TransportKind.ipc },
    debug: { module, transport: TransportKind.ipc, options: { execArgv: ["--nolazy", "--inspect=6009"] } },
  };
  client = new LanguageClient("sunwright", "Sunwright", server, clientOptions(context));
  context.subscriptions.push(...registerCommands(context, client, () => startNodeWorker(context)));
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
