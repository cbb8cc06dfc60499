import type { MessagePort } from "node:worker_threads";
import { BrowserMessageReader, BrowserMessageWriter, createMessageConnection } from "vscode-jsonrpc/browser";
import { draw } from "./answers.js";
import { drawQuestion } from "./questions.js";

declare const require: undefined | ((name: string) => { readonly parentPort: MessagePort });

/** One program for a web worker, whose port is its global object, and for a thread of Node, whose port acts like one. */
const port = (typeof require === "undefined" ? globalThis : require("node:worker_threads").parentPort) as unknown as
  ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createMessageConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
connection.onRequest(drawQuestion, draw);
connection.listen();
