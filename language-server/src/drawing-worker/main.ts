import type { MessagePort } from "node:worker_threads";
import { BrowserMessageReader, BrowserMessageWriter, createMessageConnection } from "vscode-jsonrpc/browser";
import { engine } from "../drawing/engine.js";
import { chart, draw, file } from "./answers.js";
import { chartQuestion, drawQuestion, fileQuestion } from "./questions.js";

type Port = ConstructorParameters<typeof BrowserMessageReader>[0];
declare const require: (name: "node:worker_threads") => { readonly parentPort: MessagePort };

/** One program for a web worker, whose port is its global object, and for a thread of Node, whose port acts like one. */
const isOwnPort = "postMessage" in globalThis;
const port = (isOwnPort ? globalThis : require("node:worker_threads").parentPort) as unknown as Port;

const connection = createMessageConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
connection.onRequest(drawQuestion, draw);
connection.onRequest(chartQuestion, chart);
connection.onRequest(fileQuestion, file);
connection.listen();
// Its first use takes longer than all that follow: better while nobody waits.
void engine();
