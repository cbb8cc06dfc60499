import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import {
  createProtocolConnection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

/** What is asked of a document: at an offset, or about a stretch. */
export interface Question {
  readonly at?: number;
  readonly from?: number;
  readonly to?: number;
  readonly [more: string]: unknown;
}

/** One server process at the other end of real pipes, with one open document. */
export class Session {
  private document: TextDocument;
  private heard: ((diagnostics: Diagnostic[]) => void) | undefined;

  private constructor(
    private readonly child: ChildProcess,
    private readonly connection: ProtocolConnection,
    languageId: string,
    text: string,
  ) {
    const uri = `untitled:bench.${languageId === "json" ? "json" : "sun"}`;
    this.document = TextDocument.create(uri, languageId, 1, text);
    connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
      if (params.uri === uri) this.heard?.(params.diagnostics);
    });
    connection.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) => items.map(() => null));
    connection.onRequest("client/registerCapability", () => null);
    connection.listen();
  }

  /** Starts a server and opens the text; `pull` where diagnostics are asked for instead of sent. */
  static async open(program: string, languageId: string, text: string, pull: boolean): Promise<Session> {
    const child = spawn(process.execPath, [program, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
    const { stdin, stdout } = child;
    const connection = createProtocolConnection(new StreamMessageReader(stdout!), new StreamMessageWriter(stdin!));
    const session = new Session(child, connection, languageId, text);
    await connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: null,
      capabilities: {
        textDocument: {
          publishDiagnostics: {},
          diagnostic: {},
          codeAction: { dataSupport: true, resolveSupport: { properties: ["edit"] } },
        },
      },
    });
    await connection.sendNotification("initialized", {});
    const { uri } = session.document;
    const told = pull ? undefined : session.until(() => true);
    await connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId, version: 1, text },
    });
    await (told ?? session.pull());
    return session;
  }

  /** Replaces one character; resolves when diagnostics are sent that are as awaited. */
  async edit(offset: number, text: string, awaited: (diagnostics: Diagnostic[]) => boolean): Promise<void> {
    const told = this.until(awaited);
    await this.change(offset, text);
    return told;
  }

  /** Replaces one character and asks for the diagnostics. */
  async editAndPull(offset: number, text: string): Promise<Diagnostic[]> {
    await this.change(offset, text);
    return this.pull();
  }

  /** Replaces one character and waits for nothing. */
  change(offset: number, text: string): Promise<void> {
    const range = { start: this.document.positionAt(offset), end: this.document.positionAt(offset + 1) };
    const version = this.document.version + 1;
    this.document = TextDocument.update(this.document, [{ range, text }], version);
    const { uri } = this.document;
    return this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges: [{ range, text }],
    });
  }

  /** Waits for diagnostics that are as awaited; of what came before, nothing counts. */
  until(awaited: (diagnostics: Diagnostic[]) => boolean): Promise<void> {
    return new Promise((resolve) => {
      this.heard = (diagnostics) => {
        if (awaited(diagnostics)) resolve();
      };
    });
  }

  /** A request about the document; `position` and `range` in offsets become the editor's own. */
  ask(method: string, { at, from, to, ...more }: Question = {}): Promise<unknown> {
    const { uri } = this.document;
    return this.connection.sendRequest(method, {
      textDocument: { uri },
      ...(at === undefined ? {} : { position: this.document.positionAt(at) }),
      ...(from === undefined || to === undefined
        ? {}
        : { range: { start: this.document.positionAt(from), end: this.document.positionAt(to) } }),
      ...more,
    });
  }

  private async pull(): Promise<Diagnostic[]> {
    const { uri } = this.document;
    const report: DocumentDiagnosticReport = await this.connection.sendRequest("textDocument/diagnostic", {
      textDocument: { uri },
    });
    return report.kind === "full" ? report.items : [];
  }

  /** Resident memory in megabytes; undefined where the system does not tell. */
  memory(): number | undefined {
    try {
      const status = readFileSync(`/proc/${this.child.pid}/status`, "utf8");
      return Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1]) / 1024;
    } catch {
      return undefined;
    }
  }

  async close(): Promise<void> {
    await this.connection.sendRequest("shutdown");
    await this.connection.sendNotification("exit");
    this.connection.dispose();
    this.child.kill();
  }
}
