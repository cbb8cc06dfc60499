import { type Stats, watch } from "node:fs";
import { lstat, mkdir, readdir, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import type { IncomingMessage, ServerResponse } from "node:http";
import { dirname, join, sep } from "node:path";
import { text as readText } from "node:stream/consumers";
import type { FileNotice, FileState } from "../folder/file-state.js";
import { inside } from "./static-files.js";

const isFile = 1;
const isFolder = 2;

/**
 * The files of one folder over HTTP, for the editor in the browser: `GET ?stat`, `?list`, `?tree`, `GET`, `PUT`,
 * `POST ?folder`, `POST ?rename` with the new path as its body, `DELETE`, and `GET ?watch` for a stream of changed paths.
 * Nothing outside the folder is reached, also not by way of a link.
 */
export class WorkspaceFiles {
  private readonly listeners = new Set<(notice: FileNotice) => void>();

  /** Every path begins with the folder's name, so that the editor has something to call it by. */
  constructor(
    private readonly root: string,
    private readonly name: string,
  ) {}

  /** Answers one request; `path` is decoded and begins with a slash. */
  async answer(request: IncomingMessage, response: ServerResponse, path: string, query: URLSearchParams) {
    try {
      const file = await this.locate(path);
      const method = request.method ?? "GET";
      if (method === "GET" && query.has("watch")) return this.watch(response);
      if (method === "GET" && query.has("stat")) return sendJson(response, await state(file));
      if (method === "GET" && query.has("list")) return sendJson(response, await entries(file));
      if (method === "GET" && query.has("tree")) return sendJson(response, await tree(file));
      if (method === "GET") return send(response, 200, await readFile(file));
      if (method === "PUT") await this.write(file, request, query);
      else if (method === "POST" && query.has("folder")) await mkdir(file);
      else if (method === "POST" && query.has("rename")) {
        const to = await readText(request);
        await this.rename(file, to, query);
        this.tell(["rename", to]);
      } else if (method === "DELETE") await rm(file, { recursive: query.has("recursive") });
      else return send(response, 405);
      send(response, 204);
      // The system's own notices come late, and not always: what was done here is told at once.
      this.tell([method === "PUT" && !query.has("create") ? "change" : "rename", path]);
    } catch (error) {
      const { code = "EIO", message } = error as NodeJS.ErrnoException;
      send(response, 409, JSON.stringify({ code, message }));
    }
  }

  private async locate(path: string): Promise<string> {
    const [, name, ...below] = path.split("/");
    if (name !== this.name && path !== "/") throw refused("ENOENT", `There is only ${this.name} here`);
    const file = inside(this.root, below.join("/"));
    if (file === undefined) throw refused("EACCES", "This path leads out of the folder");
    const existing = await nearestExisting(file);
    const [real, root] = await Promise.all([realpath(existing), realpath(this.root)]);
    if (real !== root && !real.startsWith(root + sep)) throw refused("EACCES", "This link leads out of the folder");
    return file;
  }

  private async write(file: string, request: IncomingMessage, query: URLSearchParams): Promise<void> {
    const found = await stat(file).catch(() => undefined);
    if (found && !query.has("overwrite")) throw refused("EEXIST", "The file is there already");
    if (!found && !query.has("create")) throw refused("ENOENT", "There is no such file");
    // Who runs as root may write everywhere; what is marked as not to be written stays as it is all the same.
    if (found && isReadOnly(found)) throw refused("EACCES", "The file is read-only");
    const chunks: Uint8Array[] = [];
    for await (const chunk of request) chunks.push(chunk as Uint8Array);
    await writeFile(file, Buffer.concat(chunks));
  }

  private async rename(file: string, to: string, query: URLSearchParams): Promise<void> {
    const target = await this.locate(to);
    const isThere = await stat(target).then(
      () => true,
      () => false,
    );
    if (isThere && !query.has("overwrite")) throw refused("EEXIST", "There is something of this name already");
    await rename(file, target);
  }

  private tell(notice: FileNotice): void {
    for (const listener of this.listeners) listener(notice);
  }

  /** Sends what happens to the files, here and by other programs, until the other end goes away. */
  private watch(response: ServerResponse): void {
    response.writeHead(200, { "content-type": "text/event-stream", "cache-control": "no-store" });
    response.write(":\n\n");
    const listener = (notice: FileNotice) => void response.write(`data: ${JSON.stringify(notice)}\n\n`);
    this.listeners.add(listener);
    const watcher = watch(this.root, { recursive: true }, (event, name) => {
      if (name !== null) listener([event, ["", this.name, ...name.split(sep)].join("/")]);
    });
    // Where the system gives no notices, those of this server remain.
    watcher.on("error", () => watcher.close());
    response.on("close", () => {
      this.listeners.delete(listener);
      watcher.close();
    });
  }
}

async function state(file: string): Promise<FileState> {
  const found = await stat(file);
  const type = found.isDirectory() ? isFolder : isFile;
  return { type, size: found.size, mtime: found.mtimeMs, ctime: found.ctimeMs, isReadOnly: isReadOnly(found) };
}

async function entries(folder: string): Promise<[string, number][]> {
  const found = await readdir(folder, { withFileTypes: true });
  return found
    .filter((entry) => entry.isFile() || entry.isDirectory())
    .map((entry) => [entry.name, entry.isDirectory() ? isFolder : isFile]);
}

const unsearched = new Set(["node_modules", ".git"]);

/** The files below a folder, by their paths from there. */
async function tree(folder: string): Promise<string[]> {
  const found = await readdir(folder, { withFileTypes: true });
  const paths = found.map(async (entry) => {
    if (entry.isFile()) return [entry.name];
    if (!entry.isDirectory() || unsearched.has(entry.name)) return [];
    return (await tree(join(folder, entry.name))).map((path) => `${entry.name}/${path}`);
  });
  return (await Promise.all(paths)).flat();
}

function isReadOnly({ mode }: Stats): boolean {
  return (mode & 0o222) === 0;
}

async function nearestExisting(file: string): Promise<string> {
  const isThere = await lstat(file).then(
    () => true,
    () => false,
  );
  return isThere ? file : nearestExisting(join(dirname(file)));
}

function refused(code: string, message: string): Error {
  return Object.assign(new Error(message), { code });
}

function send(response: ServerResponse, status: number, body?: Uint8Array | string): void {
  response.writeHead(status, { "content-type": "application/octet-stream", "cache-control": "no-store" });
  response.end(body);
}

function sendJson(response: ServerResponse, value: unknown): void {
  send(response, 200, JSON.stringify(value));
}
