import {
  type Disposable,
  EventEmitter,
  type FileChangeEvent,
  FileChangeType,
  FilePermission,
  type FileStat,
  FileSystemError,
  type FileSystemProvider,
  type FileType,
  type Uri,
} from "vscode";
import type { FileNotice, FileState } from "./file-state";

/** A folder on the machine that serves this editor, reached over HTTP; see `WorkspaceFiles` for the other end. */
export class HttpFolder implements FileSystemProvider, Disposable {
  private readonly changes = new EventEmitter<FileChangeEvent[]>();
  readonly onDidChangeFile = this.changes.event;
  private source: EventSource | undefined;
  private root: Uri | undefined;

  constructor(private readonly address: string) {}

  watch(uri: Uri): Disposable {
    this.root ??= uri.with({ path: "/" });
    this.source ??= this.listen();
    return { dispose: () => {} };
  }

  async stat(uri: Uri): Promise<FileStat> {
    const { type, size, mtime, ctime, isReadOnly }: FileState = await (await this.ask(uri, "GET", "stat")).json();
    return { type, size, mtime, ctime, ...(isReadOnly ? { permissions: FilePermission.Readonly } : {}) };
  }

  async readDirectory(uri: Uri): Promise<[string, FileType][]> {
    return (await this.ask(uri, "GET", "list")).json();
  }

  async readFile(uri: Uri): Promise<Uint8Array> {
    return new Uint8Array(await (await this.ask(uri, "GET", "")).arrayBuffer());
  }

  async writeFile(uri: Uri, content: Uint8Array, how: { create: boolean; overwrite: boolean }): Promise<void> {
    await this.ask(
      uri,
      "PUT",
      [how.create && "create", how.overwrite && "overwrite"].filter(Boolean).join("&"),
      content,
    );
  }

  async createDirectory(uri: Uri): Promise<void> {
    await this.ask(uri, "POST", "folder");
  }

  async delete(uri: Uri, { recursive }: { recursive: boolean }): Promise<void> {
    await this.ask(uri, "DELETE", recursive ? "recursive" : "");
  }

  async rename(from: Uri, to: Uri, { overwrite }: { overwrite: boolean }): Promise<void> {
    await this.ask(from, "POST", overwrite ? "rename&overwrite" : "rename", to.path);
  }

  /** Every file below a folder, without those that no editor searches. */
  async filesBelow(uri: Uri): Promise<Uri[]> {
    const paths: string[] = await (await this.ask(uri, "GET", "tree")).json();
    return paths.map((path) => uri.with({ path: `${uri.path.replace(/\/$/, "")}/${path}` }));
  }

  dispose(): void {
    this.source?.close();
    this.changes.dispose();
  }

  private async ask(uri: Uri, method: string, query: string, body?: Uint8Array | string): Promise<Response> {
    const path = uri.path.split("/").map(encodeURIComponent).join("/");
    const response = await fetch(`${this.address}${path}?${query}`, { method, body: body as BodyInit });
    if (response.ok) return response;
    throw failure(uri, await response.text());
  }

  /** The other end names each path in which something happened; what it was shows when one looks. */
  private listen(): EventSource {
    const source = new EventSource(`${this.address}/?watch`);
    source.onmessage = ({ data }) => {
      const [event, path]: FileNotice = JSON.parse(data);
      const uri = this.root!.with({ path });
      const came = event === "rename" ? FileChangeType.Created : FileChangeType.Changed;
      this.stat(uri).then(
        () => this.changes.fire([{ type: came, uri }]),
        () => this.changes.fire([{ type: FileChangeType.Deleted, uri }]),
      );
    };
    return source;
  }
}

function failure(uri: Uri, answer: string): FileSystemError {
  const { code, message } = readAnswer(answer);
  if (code === "ENOENT" || code === "ENOTDIR") return FileSystemError.FileNotFound(uri);
  if (code === "EEXIST" || code === "ENOTEMPTY") return FileSystemError.FileExists(uri);
  if (code === "EISDIR") return FileSystemError.FileIsADirectory(uri);
  if (code === "EACCES" || code === "EPERM") return FileSystemError.NoPermissions(message);
  return FileSystemError.Unavailable(message);
}

function readAnswer(answer: string): { readonly code?: string; readonly message: string } {
  try {
    return JSON.parse(answer);
  } catch {
    return { message: "The program that serves this folder does not answer" };
  }
}
