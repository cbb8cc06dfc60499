import { Worker } from "node:worker_threads";
import { type ExtensionContext, Uri } from "vscode";
import { PortMessageReader, PortMessageWriter } from "vscode-languageclient/node";
import type { RunningWorker } from "./drawing-worker";
import { workerFile } from "./worker-file";

/** Desktop: a thread of the extension host's own process. */
export function startNodeWorker(context: ExtensionContext): RunningWorker {
  const worker = new Worker(Uri.joinPath(context.extensionUri, ...workerFile).fsPath);
  return {
    reader: new PortMessageReader(worker),
    writer: new PortMessageWriter(worker),
    onEnd: (ended) => worker.once("exit", ended),
    terminate: () => void worker.terminate(),
  };
}
