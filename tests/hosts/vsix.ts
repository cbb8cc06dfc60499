import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";

/** The files of a packaged extension, by path; folders are left out. */
export function filesOf(vsix: Uint8Array): ReadonlyMap<string, Uint8Array> {
  return new Map(Object.entries(unzipSync(vsix)).filter(([path]) => !path.endsWith("/")));
}

/** Writes the extension itself, without the papers of the package, to a folder. */
export function unpackVsix(vsix: Uint8Array, folder: string): void {
  const prefix = "extension/";
  for (const [path, content] of filesOf(vsix)) {
    if (!path.startsWith(prefix)) continue;
    const file = join(folder, path.slice(prefix.length));
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
}
