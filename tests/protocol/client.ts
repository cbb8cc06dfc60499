import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import {
  type ClientCapabilities,
  type CodeAction,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver/node";

const program = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "language-server", "dist", "server.cjs");

export interface ClientOptions {
  /** Files written to the folder before the server starts, by relative path. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Whether the folder is opened as a workspace; otherwise single files are. */
  readonly asWorkspace?: boolean;
  /** What else the editor says that it can do. */
  readonly capabilities?: Pick<ClientCapabilities, "workspace" | "textDocument">;
  /** What else it is started with. */
  readonly options?: Readonly<Record<string, unknown>>;
  /** Whether it takes texts with places to fill in. */
  readonly snippets?: boolean;
  /** Whether it wants to be told which designs have been computed anew. */
  readonly designChanged?: boolean;
}

/** An editor at the other end of the built server's standard input and output, with a folder of its own. */
export class Client {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly errors: string[] = [];
  capabilities: InitializeResult["capabilities"] = {};
  private readonly texts = new Map<string, { text: string; version: number }>();
  private readonly shown = new Map<string, Diagnostic[]>();
  private readonly listeners = new Set<() => void>();

  private constructor(
    readonly folder: string,
    private readonly child: ChildProcess,
    readonly connection: ProtocolConnection,
    private settings: Readonly<Record<string, unknown>>,
  ) {
    connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
      this.published.push(params);
      this.shown.set(params.uri, params.diagnostics);
      for (const listener of this.listeners) listener();
    });
    connection.onNotification("window/logMessage", ({ type, message }: { type: number; message: string }) => {
      if (type === 1) this.errors.push(message);
    });
    connection.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) =>
      items.map(() => this.settings),
    );
    connection.onRequest("client/registerCapability", () => null);
    connection.listen();
  }

  static async start({
    files = {},
    settings = {},
    asWorkspace = true,
    capabilities = {},
    options = {},
    snippets = false,
    designChanged = false,
  }: ClientOptions = {}): Promise<Client> {
    if (!existsSync(program)) throw new Error("The server is not built: run npm run build first");
    const folder = mkdtempSync(join(tmpdir(), "sunwright-protocol-"));
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    }
    const child = spawn(process.execPath, [program, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout!),
      new StreamMessageWriter(child.stdin!),
    );
    const client = new Client(folder, child, connection, settings);
    const uri = pathToFileURL(folder).toString();
    const result: InitializeResult = await connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri: asWorkspace ? uri : null,
      workspaceFolders: asWorkspace ? [{ uri, name: "house" }] : null,
      capabilities: {
        workspace: {
          configuration: true,
          didChangeConfiguration: { dynamicRegistration: true },
          ...capabilities.workspace,
        },
        textDocument: {
          publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true },
          completion: { completionItem: { snippetSupport: snippets } },
          ...capabilities.textDocument,
        },
      },
      initializationOptions: { docs: "file:///docs", ...options, ...(designChanged && { designChanged }) },
    });
    client.capabilities = result.capabilities;
    await connection.sendNotification("initialized", {});
    return client;
  }

  uri(name: string): string {
    return pathToFileURL(join(this.folder, name)).toString();
  }

  async open(name: string, text: string): Promise<void> {
    this.texts.set(name, { text, version: 1 });
    await this.connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri: this.uri(name), languageId: "sunwright", version: 1, text },
    });
  }

  async close(name: string): Promise<void> {
    this.texts.delete(name);
    await this.connection.sendNotification("textDocument/didClose", { textDocument: { uri: this.uri(name) } });
  }

  text(name: string): string {
    return this.texts.get(name)?.text ?? "";
  }

  /** Replaces the one occurrence of a piece of an open text, as typing would. */
  async replace(name: string, before: string, after: string): Promise<void> {
    const text = this.text(name);
    const start = text.indexOf(before);
    if (start < 0 || text.indexOf(before, start + 1) >= 0) throw new Error(`"${before}" must occur once in ${name}`);
    await this.edit(name, [{ start, end: start + before.length, text: after }]);
  }

  /** Applies the edits of one file, as an editor applies those of a code action. */
  async applyEdits(name: string, edits: readonly TextEdit[]): Promise<void> {
    const offsets = edits.map(({ range, newText }) => ({
      start: this.offset(name, range.start),
      end: this.offset(name, range.end),
      text: newText,
    }));
    await this.edit(name, offsets);
  }

  async apply(edit: WorkspaceEdit): Promise<void> {
    for (const [uri, edits] of Object.entries(edit.changes ?? {})) {
      const name = [...this.texts.keys()].find((candidate) => this.uri(candidate) === uri);
      if (name === undefined) throw new Error(`${uri} is not open`);
      await this.applyEdits(name, edits);
    }
  }

  private async edit(name: string, edits: readonly { start: number; end: number; text: string }[]): Promise<void> {
    const entry = this.texts.get(name);
    if (!entry) throw new Error(`${name} is not open`);
    for (const { start, end, text } of [...edits].sort((a, b) => b.start - a.start)) {
      const range = { start: this.position(name, start), end: this.position(name, end) };
      entry.text = entry.text.slice(0, start) + text + entry.text.slice(end);
      entry.version++;
      await this.connection.sendNotification("textDocument/didChange", {
        textDocument: { uri: this.uri(name), version: entry.version },
        contentChanges: [{ range, text }],
      });
    }
  }

  async configure(settings: Readonly<Record<string, unknown>>): Promise<void> {
    this.settings = settings;
    await this.connection.sendNotification("workspace/didChangeConfiguration", { settings: null });
  }

  /** Writes a file behind the editor's back, and tells the server as a watcher would. */
  async write(name: string, content: string): Promise<void> {
    const isNew = !existsSync(join(this.folder, name));
    writeFileSync(join(this.folder, name), content);
    await this.watched(name, isNew ? 1 : 2);
  }

  async remove(name: string): Promise<void> {
    rmSync(join(this.folder, name));
    await this.watched(name, 3);
  }

  private async watched(name: string, type: number): Promise<void> {
    await this.connection.sendNotification("workspace/didChangeWatchedFiles", {
      changes: [{ uri: this.uri(name), type }],
    });
  }

  /** What is shown in a file, without what could not be checked. */
  findings(name: string): Diagnostic[] {
    return (this.shown.get(this.uri(name)) ?? []).filter(({ severity }) => severity !== 4);
  }

  all(name: string): Diagnostic[] {
    return this.shown.get(this.uri(name)) ?? [];
  }

  ids(name: string): string[] {
    return this.findings(name).map(({ code }) => String(code));
  }

  /** Resolves once what is shown fulfils a condition; the test's own time limit ends a vain wait. */
  async until(condition: () => boolean): Promise<void> {
    if (condition()) return;
    await new Promise<void>((resolve) => {
      const listener = (): void => {
        if (!condition()) return;
        this.listeners.delete(listener);
        resolve();
      };
      this.listeners.add(listener);
    });
  }

  /** Resolves once a file has been looked at. */
  async looked(name: string): Promise<void> {
    await this.until(() => this.shown.has(this.uri(name)));
  }

  /** Sends a request about the place of a marked piece of text: `|` in it is where the cursor stands. */
  async at<Result>(method: string, name: string, marked: string, more: object = {}): Promise<Result> {
    return this.connection.sendRequest<Result>(method, {
      textDocument: { uri: this.uri(name) },
      position: this.cursor(name, marked),
      ...more,
    });
  }

  async actions(name: string, diagnostic: Diagnostic): Promise<CodeAction[]> {
    return this.connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri: this.uri(name) },
      range: diagnostic.range,
      context: { diagnostics: [diagnostic] },
    });
  }

  cursor(name: string, marked: string): Position {
    const inside = marked.indexOf("|");
    const start = this.text(name).indexOf(marked.replace("|", ""));
    if (inside < 0 || start < 0) throw new Error(`"${marked}" is not in ${name}, or has no cursor`);
    return this.position(name, start + inside);
  }

  position(name: string, offset: number): Position {
    const before = this.text(name)
      .slice(0, offset)
      .split(/\r\n|\r|\n/);
    return { line: before.length - 1, character: before[before.length - 1]!.length };
  }

  offset(name: string, { line, character }: Position): number {
    const text = this.text(name);
    let offset = 0;
    for (let passed = 0; passed < line; passed++) offset = text.indexOf("\n", offset) + 1;
    return offset + character;
  }

  /** Ends the session as an editor does; the exit code of the process. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest("shutdown");
    return this.leave();
  }

  /** Says that it is going, without asking the server to end in order. */
  async leave(): Promise<number | null> {
    const ended = new Promise<number | null>((resolve) => this.child.once("exit", resolve));
    await this.connection.sendNotification("exit");
    const code = await ended;
    this.dispose();
    return code;
  }

  /** Lets go of everything, also after a failed test. */
  dispose(): void {
    this.connection.dispose();
    if (this.child.exitCode === null) this.child.kill();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
