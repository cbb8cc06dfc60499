import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { answerForFiles } from "./client-files";
import { clientOptions } from "./client-options";
import { registerCommands } from "./commands";

let client: LanguageClient | undefined;

/** Browser: the same server in a web worker. */
export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, "dist", "browser-server.js");
  const worker = new Worker(script.toString(true));
  client = new LanguageClient("sunwright", "Sunwright", worker, clientOptions(context));
  context.subscriptions.push(...registerCommands(context, client), ...answerForFiles(client));
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
