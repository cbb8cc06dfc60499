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
import { DrawingWorker } from "./drawing/drawing-worker";
import { type MarkdownPlugin, registerPreview } from "./preview/register";

let client: LanguageClient | undefined;

/** Browser: the same server in a web worker. */
export function activate(context: ExtensionContext): MarkdownPlugin {
  const script = Uri.joinPath(context.extensionUri, "dist", "browser-server.js");
  let worker: Worker | undefined;
  // A worker that was told to stop does not begin again: each start has its own.
  const startWorker = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(script.toString(true));
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  client = new LanguageClient("sunwright", "Sunwright", startWorker, clientOptions(context));
  const drawing = new DrawingWorker(() => startBrowserWorker(context));
  const { plugin, parts } = registerPreview(client, drawing);
  context.subscriptions.push(
    drawing,
    ...parts,
    ...registerCommands(context, client, drawing),
    ...answerForFiles(client),
  );
  // Whoever opens a page of Markdown does not wait for it; the client itself tells when it cannot be started.
  client.start().catch(() => undefined);
  return plugin;
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
