// What a web worker has, on top of a thread of Node: the global scope is the port, and a script runs without modules.
import { readFileSync } from "node:fs";
import { runInThisContext } from "node:vm";
import { parentPort, workerData } from "node:worker_threads";

const scope = new EventTarget();
// Fetched from Node while it is still whole.
const { MessageEvent } = globalThis;
globalThis.self = globalThis;
globalThis.addEventListener = scope.addEventListener.bind(scope);
globalThis.removeEventListener = scope.removeEventListener.bind(scope);
globalThis.postMessage = (message) => parentPort.postMessage(message);
parentPort.on("message", (data) => {
  const event = new MessageEvent("message", { data });
  scope.dispatchEvent(event);
  globalThis.onmessage?.(event);
});

// A browser's worker has none of these; code that looks for them must not find them.
for (const name of ["process", "require", "module", "Buffer", "global"]) delete globalThis[name];
runInThisContext(readFileSync(workerData, "utf8"), { filename: workerData });
