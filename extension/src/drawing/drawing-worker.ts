import type { Disposable } from "vscode";
import { createMessageConnection, type MessageConnection, type MessageTransports } from "vscode-languageclient";
import {
  type ChartParams,
  chartQuestion,
  type DrawParams,
  drawQuestion,
  type FileParams,
  fileQuestion,
} from "../../../language-server/src/drawing-worker/questions";

/** A worker that runs the drawing program, however the host starts one. */
export interface RunningWorker extends MessageTransports {
  /** Called when it ends without having been told to. */
  onEnd(ended: () => void): void;
  terminate(): void;
}

interface Life {
  readonly worker: RunningWorker;
  readonly connection: MessageConnection;
  /** Rejects when the worker has ended. */
  readonly ended: Promise<never>;
}

/** Asks the drawing worker, which is started when it is first needed and again when it has died. */
export class DrawingWorker implements Disposable {
  private life: Life | undefined;

  constructor(private readonly start: () => RunningWorker) {}

  /** Starts it before anything is asked. */
  warm(): void {
    this.running();
  }

  /** The picture of a diagram. */
  draw(params: DrawParams): Promise<string> {
    return this.ask(drawQuestion, params);
  }

  chart(params: ChartParams): Promise<string> {
    return this.ask(chartQuestion, params);
  }

  /** The bytes of a file. */
  async file(params: FileParams): Promise<Uint8Array> {
    const text = await this.ask<string>(fileQuestion, params);
    return params.as === "svg"
      ? new TextEncoder().encode(text)
      : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  }

  dispose(): void {
    const { life } = this;
    this.life = undefined;
    life?.connection.dispose();
    life?.worker.terminate();
  }

  /** A worker may be ended from outside; what cannot be answered for another reason fails in a new one as well. */
  private async ask<Result>(question: string, params: object): Promise<Result> {
    const life = this.running();
    const answer = Promise.race([life.connection.sendRequest<Result>(question, params), life.ended]);
    return answer.catch((error) => {
      if (this.life === life) throw error;
      return this.running().connection.sendRequest<Result>(question, params);
    });
  }

  private running(): Life {
    if (this.life) return this.life;
    const worker = this.start();
    const connection = createMessageConnection(worker.reader, worker.writer);
    const ended = new Promise<never>((_, reject) =>
      worker.onEnd(() => {
        if (this.life?.worker === worker) this.life = undefined;
        connection.dispose();
        reject(new Error("The drawing worker has ended"));
      }),
    );
    // Nobody may be waiting when it ends.
    ended.catch(() => undefined);
    connection.listen();
    this.life = { worker, connection, ended };
    return this.life;
  }
}
