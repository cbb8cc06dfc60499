import { type ExtensionContext, Uri } from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { answerForFiles } from "./client-files";
import { clientOptions } from "./client-options";
import { registerCommands } from "./commands";
import { startBrowserWorker } from "./drawing/browser-worker";

let client: LanguageClient | undefined;

/** Browser: the same server in a web worker. */
export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, "dist", "browser-server.js");
  let worker: Worker | undefined;
  // A worker that was told to stop does not begin again: each start has its own.
  const startWorker = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(script.toString(true));
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  client = new LanguageClient("sunwright", "Sunwright", startWorker, clientOptions(context));
  context.subscriptions.push(
    ...registerCommands(context, client, () => startBrowserWorker(context)),
    ...answerForFiles(client),
  );
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
