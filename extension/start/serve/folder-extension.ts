import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const source = join(dirname(fileURLToPath(import.meta.url)), "..", "folder");

/** The small extension through which the editor in the browser reaches the folder: its files by path, with their types. */
export async function folderExtension(): Promise<Readonly<Record<string, readonly [type: string, body: string]>>> {
  const { outputFiles } = await build({
    entryPoints: [join(source, "extension.ts")],
    bundle: true,
    write: false,
    format: "cjs",
    platform: "browser",
    target: "es2022",
    external: ["vscode"],
    logLevel: "warning",
  });
  return {
    "/package.json": ["application/json", readFileSync(join(source, "manifest.json"), "utf8")],
    "/package.nls.json": ["application/json", "{}"],
    "/extension.js": ["text/javascript; charset=utf-8", outputFiles[0]!.text],
  };
}
