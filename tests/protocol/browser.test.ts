import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { afterEach, expect, test } from "vitest";
import {
  createProtocolConnection,
  type Diagnostic,
  type Hover,
  PortMessageReader,
  PortMessageWriter,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
} from "vscode-languageserver/node";
import { cottage, files } from "../editor-room/alder-cottage.js";

const bundle = join(
  dirname(fileURLToPath(import.meta.url)),
  "..",
  "..",
  "language-server",
  "dist",
  "browser-server.js",
);

/** What a web worker's global object has and a worker of Node does not; nothing else of Node is in the bundle's reach. */
const globals = `
const { parentPort, workerData } = require("node:worker_threads");
globalThis.self = globalThis;
globalThis.addEventListener = () => {};
globalThis.postMessage = (message) => parentPort.postMessage(message);
parentPort.on("message", (data) => globalThis.onmessage?.({ data }));
(0, eval)("const require = undefined, process = undefined, Buffer = undefined, module = undefined;" + workerData);
`;

let worker: Worker | undefined;
let connection: ProtocolConnection | undefined;

afterEach(async () => {
  connection?.dispose();
  await worker?.terminate();
});

test("the browser's server has the same answers, and reads used files through its client", async () => {
  worker = new Worker(globals, { eval: true, workerData: readFileSync(bundle, "utf8") });
  connection = createProtocolConnection(new PortMessageReader(worker as never), new PortMessageWriter(worker as never));
  const asked: string[] = [];
  connection.onRequest("sunwright/readFolder", () => Object.keys(files).map((name) => ({ name, isFolder: false })));
  connection.onRequest("sunwright/readFile", ({ uri }: { uri: string }) => {
    asked.push(uri);
    return files[uri.slice(uri.lastIndexOf("/") + 1) as keyof typeof files];
  });
  connection.onRequest("workspace/configuration", () => [{}]);
  const shown = new Promise<Diagnostic[]>((resolve) => {
    connection?.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }: PublishDiagnosticsParams) => {
      if (diagnostics.some(({ code }) => code === "string-voltage") && uri.endsWith("/draft.sun")) resolve(diagnostics);
    });
  });
  connection.listen();
  await connection.sendRequest("initialize", { processId: null, rootUri: null, capabilities: {} });
  await connection.sendNotification("initialized", {});
  const uri = "memfs:/house/draft.sun";
  await connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "sunwright", version: 1, text: cottage.replace("8 x", "15 x") },
  });
  expect((await shown).map(({ code }) => code)).not.toContain("file-missing");
  expect(asked).toEqual(expect.arrayContaining(["memfs:/house/roof.sun", "memfs:/house/plant.sun"]));
  const line = cottage.split("\n").findIndex((text) => text.startsWith("string S1"));
  const hover = await connection.sendRequest<Hover>("textDocument/hover", {
    textDocument: { uri },
    position: { line, character: 8 },
  });
  expect(JSON.stringify(hover.contents)).toContain("Finding (error), string-voltage.");
});
