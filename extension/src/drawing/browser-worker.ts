import { type ExtensionContext, Uri } from "vscode";
import { BrowserMessageReader, BrowserMessageWriter } from "vscode-languageclient/browser";
import type { RunningWorker } from "./drawing-worker";
import { workerFile } from "./worker-file";

/** Browser: a web worker, started as the language server's is. */
export function startBrowserWorker(context: ExtensionContext): RunningWorker {
  const worker = new Worker(Uri.joinPath(context.extensionUri, ...workerFile).toString(true));
  return {
    reader: new BrowserMessageReader(worker),
    writer: new BrowserMessageWriter(worker),
    // A web worker does not say that it ends: only that something in it went wrong.
    onEnd: (ended) =>
      worker.addEventListener(
        "error",
        () => {
          worker.terminate();
          ended();
        },
        { once: true },
      ),
    terminate: () => worker.terminate(),
  };
}
