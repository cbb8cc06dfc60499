import { NodeFileSystem } from "langium/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { faultText } from "../editor/lsp/fault-text.js";
import { startServer } from "./start.js";

const transports = ["--stdio", "--node-ipc", "--socket", "--pipe"];
if (
  !process.argv.some((word) => transports.some((transport) => word === transport || word.startsWith(`${transport}=`)))
) {
  process.stderr.write(
    `The language server is started by an editor, with one of ${transports.join(", ")}. To check a design, use: sunwright check FILE\n`,
  );
  process.exit(2);
}

/** The server as a process: over standard input and output with `--stdio`, over Node's own channel with `--node-ipc`. */
const connection = createConnection(ProposedFeatures.all);

// One request that goes wrong must not take the other open designs with it.
for (const event of ["uncaughtException", "unhandledRejection"])
  process.on(event, (fault: unknown) => connection.console.error(faultText(fault)));

startServer(connection, NodeFileSystem);
