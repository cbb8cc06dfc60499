import { type ChildProcess, spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import {
  createProtocolConnection,
  type Diagnostic,
  type MessageConnection,
  type MessageReader,
  type MessageWriter,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { PortMessageReader, PortMessageWriter } from "./port-messages.js";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "..", "..", "extension", "dist");

export interface BuildClient {
  readonly connection: ProtocolConnection;
  /** What is shown of each file, by address. */
  readonly shown: ReadonlyMap<string, readonly Diagnostic[]>;
  stop(): Promise<void>;
}

/** Starts the server that is packaged for Node, as a process. */
export async function startNodeBuild(folder: string): Promise<BuildClient> {
  const child: ChildProcess = spawn(process.execPath, [join(dist, "server.cjs"), "--stdio"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const stop = async () => void child.kill();
  return begin(new StreamMessageReader(child.stdout!), new StreamMessageWriter(child.stdin!), folder, stop);
}

/** Starts the server that is packaged for browsers, in a thread that has what a web worker has and asks for its files. */
export async function startBrowserBuild(folder: string): Promise<BuildClient> {
  const worker = new Worker(join(here, "web-worker.mjs"), {
    workerData: join(dist, "browser-server.js"),
    execArgv: [],
  });
  const stop = async () => void (await worker.terminate());
  return begin(new PortMessageReader(worker), new PortMessageWriter(worker), folder, stop);
}

async function begin(reader: MessageReader, writer: MessageWriter, folder: string, stop: () => Promise<void>) {
  const connection = createProtocolConnection(reader, writer);
  const shown = new Map<string, readonly Diagnostic[]>();
  connection.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }: PublishDiagnosticsParams) => {
    shown.set(uri, diagnostics);
  });
  connection.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) => items.map(() => null));
  connection.onRequest("client/registerCapability", () => null);
  answerForFiles(connection);
  connection.listen();
  const uri = pathToFileURL(folder).toString();
  await connection.sendRequest("initialize", {
    processId: null,
    rootUri: uri,
    workspaceFolders: [{ uri, name: "examples" }],
    capabilities: { textDocument: { publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true } } },
    initializationOptions: { docs: "file:///docs" },
  });
  await connection.sendNotification("initialized", {});
  return { connection, shown, stop };
}

/** Answers as the extension in the browser does. */
function answerForFiles(connection: MessageConnection | ProtocolConnection): void {
  connection.onRequest("sunwright/readFile", ({ uri }: { uri: string }) => readFileSync(fileURLToPath(uri), "utf8"));
  connection.onRequest("sunwright/readFolder", ({ uri }: { uri: string }) =>
    readdirSync(fileURLToPath(uri), { withFileTypes: true }).map((entry) => ({
      name: entry.name,
      isFolder: entry.isDirectory(),
    })),
  );
}
