// Starts the rest under the Node that the packages bring; this file runs under any Node from 20 on.
import { spawn } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const node = join(root, "node_modules", "node", "bin", process.platform === "win32" ? "node.exe" : "node");

const child = spawn(node, ["--import", "tsx", join(here, "main.ts"), ...process.argv.slice(2)], { stdio: "inherit" });
// The child tidies up; this process waits for it.
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => child.kill(signal));
child.on("error", (error) => {
  console.error(`The packages are not complete (${error.message}). Remove node_modules and run npm start again.`);
  process.exit(1);
});
child.on("exit", (code, signal) => process.exit(signal ? 1 : (code ?? 1)));
