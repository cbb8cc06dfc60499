import { NodeFileSystem } from "langium/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { startServer } from "./start.js";

/** The server as a process: over standard input and output with `--stdio`, over Node's own channel with `--node-ipc`. */
const connection = createConnection(ProposedFeatures.all);

// One request that goes wrong must not take the other open designs with it.
process.on("uncaughtException", (error) => connection.console.error(error.stack ?? error.message));
process.on("unhandledRejection", (reason) =>
  connection.console.error(reason instanceof Error ? (reason.stack ?? reason.message) : String(reason)),
);

startServer(connection, NodeFileSystem);
