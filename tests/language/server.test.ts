import { PassThrough } from "node:stream";
import { DocumentState, type FileSystemProvider, URI } from "langium";
import { startLanguageServer } from "langium/lsp";
import { afterEach, describe, expect, test } from "vitest";
import {
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type PublishDiagnosticsParams,
} from "vscode-languageserver/node";

import { createSunwrightServices } from "../../language-server/src/language/module.js";
import { MemoryFiles } from "./memory-files.js";

const closers: (() => void)[] = [];
afterEach(() => {
  for (const close of closers.splice(0)) close();
});

const at = (name: string) => `file:///alder/${name}`;

/** A server and a client in one process, joined by two streams; only the electrical part is missing. */
async function start(files: Record<string, string> = {}) {
  const memory = new MemoryFiles(new Map(Object.entries(files).map(([name, text]) => [`/alder/${name}`, text])));
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const connection = createConnection(toServer, toClient);
  const services = createSunwrightServices({ connection, fileSystemProvider: () => memory as FileSystemProvider });
  startLanguageServer(services.shared);
  const client = createProtocolConnection(toClient, toServer);
  const published = new Map<string, Diagnostic[]>();
  const waiting = new Set<() => void>();
  client.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }: PublishDiagnosticsParams) => {
    published.set(uri, diagnostics);
    for (const look of waiting) look();
  });
  client.listen();
  closers.push(() => {
    client.dispose();
    connection.dispose();
  });
  await client.sendRequest("initialize", { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null });
  await client.sendNotification("initialized", {});

  let builds = 0;
  services.shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => {
    builds++;
  });
  const versions = new Map<string, number>();
  return {
    services,
    memory,
    published,
    builds: () => builds,
    open: (name: string, text: string) => {
      versions.set(name, 1);
      const textDocument = { uri: at(name), languageId: "sunwright", version: 1, text };
      return client.sendNotification("textDocument/didOpen", { textDocument });
    },
    change: (name: string, text: string) => {
      const version = versions.get(name)! + 1;
      versions.set(name, version);
      const params = { textDocument: { uri: at(name), version }, contentChanges: [{ text }] };
      return client.sendNotification("textDocument/didChange", params);
    },
    close: (name: string) => client.sendNotification("textDocument/didClose", { textDocument: { uri: at(name) } }),
    watched: (name: string, type: 1 | 2 | 3) =>
      client.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: at(name), type }] }),
    /** Waits until what is published for a file is as wished. */
    until: (name: string, wish: (ids: unknown[]) => boolean) =>
      new Promise<Diagnostic[]>((resolve) => {
        const look = () => {
          const diagnostics = published.get(at(name));
          if (!diagnostics || !wish(diagnostics.map((diagnostic) => diagnostic.code))) return;
          waiting.delete(look);
          resolve(diagnostics);
        };
        waiting.add(look);
        look();
      }),
  };
}

const ids =
  (...wanted: string[]) =>
  (found: unknown[]) =>
    found.join() === wanted.join();

describe("a server with texts", () => {
  test("says what is wrong with a text, at the word, and takes it back", async () => {
    const server = await start();
    await server.open("a.sun", "spd F1\nrun W1 form F1 to F2\n");
    const [problem] = await server.until("a.sun", ids("syntax"));
    expect(problem!.range).toEqual({ start: { line: 1, character: 7 }, end: { line: 1, character: 11 } });
    await server.change("a.sun", "spd F1\nrun W1 from F1 to F2\n");
    await server.until("a.sun", ids());
  });

  test("loads what a file uses, and judges its users again when it changes", async () => {
    const server = await start({ "parts.sun": 'use "house.sun"\n' });
    await server.open("house.sun", 'use "parts.sun"\n');
    await server.until("house.sun", ids("use-cycle"));
    await server.until("parts.sun", ids("use-cycle"));
    await server.open("parts.sun", "part A is module\n");
    await server.until("house.sun", ids());
    await server.until("parts.sun", ids());
  });

  test("notices a used file that comes and goes", async () => {
    const server = await start();
    await server.open("house.sun", 'use "parts.sun"\n');
    await server.until("house.sun", ids("file-missing"));
    server.memory.files.set("/alder/parts.sun", "part A is module\n");
    await server.watched("parts.sun", 1);
    await server.until("house.sun", ids());
    server.memory.files.delete("/alder/parts.sun");
    await server.watched("parts.sun", 3);
    await server.until("house.sun", ids("file-missing"));
  });

  test("a line that no longer uses a file frees it", async () => {
    const server = await start({ "parts.sun": 'use "house.sun"\n' });
    await server.open("house.sun", 'use "parts.sun"\n');
    await server.until("parts.sun", ids("use-cycle"));
    await server.change("house.sun", "spd F1\n");
    await server.until("parts.sun", ids());
  });

  test("closing a file lets the file on disk count again", async () => {
    const server = await start({ "a.sun": "spd F1\n" });
    await server.open("a.sun", "spd\n");
    await server.until("a.sun", ids("syntax"));
    await server.close("a.sun");
    await server.until("a.sun", ids());
    await server.open("new.sun", "spd\n");
    await server.until("new.sun", ids("syntax"));
    await server.close("new.sun");
    await server.until("new.sun", ids());
    expect(server.services.shared.sunwright.Project.has(at("new.sun"))).toBe(false);
  });

  test("a burst of keys is one build, of the last text", async () => {
    const server = await start();
    await server.open("a.sun", "spd F1\n");
    await server.until("a.sun", ids());
    const before = server.builds();
    for (let key = 1; key < 20; key++) void server.change("a.sun", `spd F1\nspd${" F2".slice(0, key % 4)}\n`);
    await server.change("a.sun", "spd F1\nspd {\n");
    await server.until("a.sun", ids("syntax"));
    expect(server.builds() - before).toBeLessThanOrEqual(2);
    expect(server.services.shared.sunwright.Project.text(at("a.sun"))).toBe("spd F1\nspd {\n");
  });

  test("a question right behind an edit is answered from the edited text", async () => {
    const server = await start();
    await server.open("a.sun", "spd F1\n");
    await server.until("a.sun", ids());
    const { DocumentBuilder, LangiumDocuments } = server.services.shared.workspace;
    const changed = new Promise<void>((resolve) => {
      server.services.shared.workspace.TextDocuments.onDidChangeContent(() => resolve());
    });
    await server.change("a.sun", "spd F1\nspd F2\n");
    await changed;
    const uri = URI.parse(at("a.sun"));
    expect(LangiumDocuments.getDocument(uri)!.state).toBeLessThan(DocumentState.Validated);
    await DocumentBuilder.waitUntil(DocumentState.Validated, uri);
    expect(server.services.shared.sunwright.Project.fragments(at("a.sun"))).toHaveLength(2);
  });
});
