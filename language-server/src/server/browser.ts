import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { faultText } from "../editor/lsp/fault-text.js";
import { ClientFileSystem } from "./client-files.js";
import { startServer } from "./start.js";

/** What a worker's global object has and the types of Node do not know. */
interface WorkerScope {
  addEventListener(type: "unhandledrejection", listener: (event: RejectionEvent) => void): void;
}
interface RejectionEvent {
  readonly reason: unknown;
  preventDefault(): void;
}

/** The same server in a web worker; messages go through the worker's own port. */
const scope = globalThis as unknown as WorkerScope;
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
scope.addEventListener("unhandledrejection", (event) => {
  event.preventDefault();
  connection.console.error(faultText(event.reason));
});
startServer(connection, { fileSystemProvider: () => new ClientFileSystem(connection) });
