import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { getL10nJson } from "@vscode/l10n-dev";

const translatable = /\bl10n\b/;

/** Every word of the interface that can be translated: those of the client, and those of the server's editor room. */
export async function interfaceWords(folders: readonly string[]): Promise<Record<string, unknown>> {
  const sources = folders
    .flatMap((folder) => readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)))
    .filter((file) => file.endsWith(".ts"))
    .sort()
    .map((file) => ({ contents: readFileSync(file, "utf8"), extension: ".ts" }));
  const words = await getL10nJson(sources.filter(({ contents }) => translatable.test(contents)));
  return Object.fromEntries(Object.entries(words).sort(([a], [b]) => (a < b ? -1 : 1)));
}
