import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { ServerResponse } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import { pipeline } from "node:stream/promises";

const types: Readonly<Record<string, string>> = {
  ".cjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  // Read as it is where a link leads to it.
  ".md": "text/plain; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
};

/** Answers with a file below a folder; false where there is none, or where the path leads out of the folder. */
export async function sendStatic(response: ServerResponse, folder: string, path: string): Promise<boolean> {
  const file = inside(folder, path);
  const found = file === undefined ? undefined : await stat(file).catch(() => undefined);
  if (file === undefined || !found?.isFile()) return false;
  response.writeHead(200, {
    "content-type": types[extname(file).toLowerCase()] ?? "application/octet-stream",
    "content-length": found.size,
    "cache-control": "no-cache",
  });
  // A browser that goes away in the middle is no fault of ours.
  await pipeline(createReadStream(file), response).catch(() => {});
  return true;
}

/** The absolute path of something below a folder; undefined where the path leads out of it. */
export function inside(folder: string, path: string): string | undefined {
  if (path.includes("\0")) return undefined;
  const file = normalize(join(folder, path));
  return file === normalize(folder) || file.startsWith(normalize(folder) + sep) ? file : undefined;
}
