import type { Worker } from "node:worker_threads";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Disposable,
  type Message,
  type MessageReader,
  type MessageWriter,
} from "vscode-languageserver/node";

/** Messages of the protocol as a worker posts them. */
export class PortMessageReader extends AbstractMessageReader implements MessageReader {
  constructor(private readonly worker: Worker) {
    super();
  }

  listen(callback: DataCallback): Disposable {
    this.worker.on("message", callback);
    this.worker.on("error", (error) => this.fireError(error as Error));
    return { dispose: () => this.worker.off("message", callback) };
  }
}

export class PortMessageWriter extends AbstractMessageWriter implements MessageWriter {
  constructor(private readonly worker: Worker) {
    super();
  }

  async write(message: Message): Promise<void> {
    this.worker.postMessage(message);
  }

  end(): void {}
}
