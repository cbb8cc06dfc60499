import { afterEach, expect, test, vi } from "vitest";
import { URI } from "vscode-uri";
import { DrawingWorker, type RunningWorker } from "../../extension/src/drawing/drawing-worker";
import { startNodeWorker } from "../../extension/src/drawing/node-worker";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { assessText } from "../drawing/drawn.js";

// The editor's own interface is there only in the editor.
vi.mock("vscode", async () => {
  const { URI: Uri, Utils } = await import("vscode-uri");
  return { Uri: Object.assign(Uri, { joinPath: Utils.joinPath }) };
});
vi.mock("vscode-languageclient", () => import("vscode-jsonrpc/node"));
vi.mock("vscode-languageclient/node", () => import("vscode-jsonrpc/node"));

const diagram = diagramOf(assessText("string S1 is 3 x P\nisolator Q1 {}\nrun W1 from S1 to Q1: 3 m of C"));
const extensionUri = URI.file(new URL("../../extension", import.meta.url).pathname);

let worker: DrawingWorker | undefined;
afterEach(() => worker?.dispose());

/** The threads that were started, in order. */
function threads(): RunningWorker[] {
  const started: RunningWorker[] = [];
  worker = new DrawingWorker(() => {
    const thread = startNodeWorker({ extensionUri } as unknown as Parameters<typeof startNodeWorker>[0]);
    started.push(thread);
    return thread;
  });
  return started;
}

test("a thread that was ended from outside is followed by another with the next picture", async () => {
  const started = threads();
  const svg = await worker!.draw({ diagram });
  expect(svg).toContain('data-id="Q1"');
  started[0]!.terminate();
  expect(await worker!.draw({ diagram })).toBe(svg);
  expect(started).toHaveLength(2);
});

test("a picture that was being drawn when the thread ended is drawn all the same", async () => {
  const started = threads();
  const asked = worker!.draw({ diagram });
  started[0]!.terminate();
  expect(await asked).toContain('data-id="Q1"');
  expect(started).toHaveLength(2);
});

test("what cannot be drawn is told, and asked once", async () => {
  const started = threads();
  await expect(worker!.draw({ diagram: {} as typeof diagram })).rejects.toThrow();
  expect(started).toHaveLength(1);
});
