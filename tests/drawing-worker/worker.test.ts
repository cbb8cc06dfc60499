import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  createMessageConnection,
  type MessageConnection,
  PortMessageReader,
  PortMessageWriter,
} from "vscode-jsonrpc/node";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { type DrawParams, drawQuestion } from "../../language-server/src/drawing-worker/questions.js";
import { assessText } from "../drawing/drawn.js";

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "sunwright-worker-"));
// Alone, as it is in the packaged extension: what a thread of Node takes for a script depends on the folder.
const program = join(folder, "drawing-worker.js");

beforeAll(() => {
  copyFileSync(join(here, "..", "..", "extension", "dist", "drawing-worker.js"), program);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const diagram = diagramOf(assessText("string S1 is 3 x P\nisolator Q1 {}\nrun W1 from S1 to Q1: 3 m of C"));

const ways = {
  "a thread of Node": () => new Worker(program),
  "what a web worker has": () => new Worker(join(here, "..", "hosts", "web-worker.mjs"), { workerData: program }),
};

describe.each(Object.entries(ways))("the drawing program in %s", (_, start) => {
  let worker: Worker;
  let connection: MessageConnection;
  const draw = (more: Partial<DrawParams> = {}) => connection.sendRequest<string>(drawQuestion, { diagram, ...more });

  beforeAll(() => {
    worker = start();
    connection = createMessageConnection(new PortMessageReader(worker), new PortMessageWriter(worker));
    connection.listen();
  });
  afterAll(async () => {
    connection.dispose();
    await worker.terminate();
  });

  test("draws a diagram in the paints of a page, with the ids of the text", async () => {
    const svg = await draw();
    expect(svg).toContain('data-id="Q1"');
    expect(svg).toContain("var(--sunwright-ink");
    expect(svg).not.toMatch(/style=|<style|<script/);
  });

  test("draws it at one moment, in the same places", async () => {
    const plain = await draw({ states: [["Q1", { open: false }]] });
    const open = await draw({
      states: [
        ["Q1", { open: true, live: true }],
        ["S1", { live: true }],
      ],
    });
    expect(open).toContain('data-open="true"');
    expect(open).toContain('data-live="true"');
    const size = (svg: string) => /viewBox="[^"]+"/.exec(svg)?.[0];
    expect(size(open)).toBe(size(plain));
  });

  test("a question that makes no sense fails alone", async () => {
    await expect(connection.sendRequest(drawQuestion, {})).rejects.toThrow();
    await expect(connection.sendRequest("paint", {})).rejects.toThrow();
    expect(await draw()).toContain("<svg");
  });
});
