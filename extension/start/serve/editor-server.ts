import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { folderExtension } from "./folder-extension.js";
import { type PageSettings, page } from "./page.js";
import { sendStatic } from "./static-files.js";
import { webviewFolder, webviewPage } from "./webview-page.js";
import { WorkspaceFiles } from "./workspace-files.js";

export interface EditorServerOptions {
  /** The static files of VS Code. */
  readonly code: string;
  /** The folder that is opened; edits are written there. */
  readonly folder: string;
  /** What the editor calls the folder: letters, digits, blanks. */
  readonly name: string;
  /** Folders of unpacked extensions, ours first. */
  readonly extensions: readonly string[];
  /** Files to open at the start, by path below the folder, with a slash before. */
  readonly open?: readonly string[];
  /** Port on 127.0.0.1; a free one where none is given. */
  readonly port?: number;
  /** Below the folder, with a slash before: a folder, or a `.code-workspace` file; undefined opens an empty window. */
  readonly workspace: string | undefined;
  readonly isTrusted?: boolean;
  /** The reader's; English without. */
  readonly language?: string;
  /** A folder with `index.js`, the tests that run in the extension host. */
  readonly tests?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
}

export interface EditorServer {
  /** Where the editor is. */
  readonly address: string;
  stop(): Promise<void>;
}

/**
 * Serves VS Code for the browser with our extension, on 127.0.0.1 only. Everything is below a path that nobody can guess,
 * so that neither other users of the machine nor other pages in the browser reach the files.
 */
export async function serveEditor(options: EditorServerOptions): Promise<EditorServer> {
  const secret = randomBytes(18).toString("base64url");
  const files = new WorkspaceFiles(options.folder, options.name);
  const access = await folderExtension();
  const panels = await webviewPage(options.code);
  const server = createServer((request, response) => {
    handle(request, response).catch((error: unknown) => {
      console.error(error);
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(options.port ?? 0, "127.0.0.1", resolve);
  });
  const { port } = server.address() as AddressInfo;
  const origin = `http://127.0.0.1:${port}`;
  const base = `${origin}/${secret}`;

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = new URL(request.url ?? "/", origin);
    const [, given, room = "", ...rest] = url.pathname.split("/").map(decodeURIComponent);
    if (given !== secret || !isOurs(request.headers.host, port)) return notFound(response);
    const path = `/${rest.join("/")}`;
    if (room === "") return send(response, "text/html; charset=utf-8", page(settings(url.searchParams)));
    if (room === "files") return files.answer(request, response, path, url.searchParams);
    if (room === "folder" && access[path] !== undefined) return send(response, ...access[path]);
    if (room === "code" && path === `/${webviewFolder}index.html`)
      return send(response, "text/html; charset=utf-8", panels);
    const [index = "", ...below] = rest;
    const found =
      (room === "code" && (await sendStatic(response, options.code, path))) ||
      // Tests lie in the extension under development: that is how its extension host is found.
      (room === "folder" && index === "tests" && (await sendExtension(response, options.tests, below))) ||
      (room === "extension" && (await sendExtension(response, options.extensions[Number(index)], below)));
    if (!found) notFound(response);
  }

  function settings(query: URLSearchParams): PageSettings & { readonly webviews: string } {
    const isPlain = query.has("plain");
    return {
      base,
      scheme: "sunwright-folder",
      workspace: query.get("workspace") ?? whole(options),
      extensions: options.extensions.map((_, index) => `${base}/extension/${index}`),
      folder: `${base}/folder`,
      isTrusted: options.isTrusted ?? true,
      open: (options.open ?? []).map((path) => `/${options.name}${path}`),
      webviews: `${base}/code/${webviewFolder}`,
      ...(options.language ? { language: options.language } : {}),
      ...(options.settings ? { settings: options.settings } : {}),
      ...(options.tests && !isPlain ? { tests: `${base}/folder/tests/index.js` } : {}),
    };
  }

  return {
    address: `${base}/`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function whole({ name, workspace }: EditorServerOptions): string | undefined {
  return workspace === undefined ? undefined : `/${name}${workspace}`;
}

/** A page of another site that has its name point at 127.0.0.1 sends that name here, and gets nothing. */
function isOurs(host: string | undefined, port: number): boolean {
  return host === `127.0.0.1:${port}`;
}

async function sendExtension(response: ServerResponse, folder: string | undefined, path: readonly string[]) {
  if (folder === undefined) return false;
  if (await sendStatic(response, folder, path.join("/"))) return true;
  // Every extension is asked for its translations; ours has none yet.
  if (path.join("/") !== "package.nls.json") return false;
  send(response, "application/json", "{}");
  return true;
}

function send(response: ServerResponse, type: string, body: string | Uint8Array): void {
  response.writeHead(200, { "content-type": type, "cache-control": "no-store" });
  response.end(body);
}

function notFound(response: ServerResponse): void {
  response.writeHead(404).end();
}
