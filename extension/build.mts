import { copyFileSync, mkdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { isKeyword, textMateGrammar } from "@sunwright/grammar";
import { build } from "esbuild";
import { kindRows } from "../language-server/src/design/schema/index.js";
import { referencePages, snippetsFile } from "../language-server/src/reference/index.js";

const here = dirname(fileURLToPath(import.meta.url));
const server = join(here, "..", "language-server", "dist");
const dist = join(here, "dist");

rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });

const common = { bundle: true, minify: true, external: ["vscode"], logLevel: "warning" } as const;
await build({
  ...common,
  entryPoints: [join(here, "src", "extension.ts")],
  outfile: join(dist, "extension.cjs"),
  platform: "node",
  format: "cjs",
  target: "node20",
});
await build({
  ...common,
  entryPoints: [join(here, "src", "extension.browser.ts")],
  outfile: join(dist, "extension.browser.js"),
  platform: "browser",
  format: "cjs",
  target: "es2022",
});
for (const file of ["server.cjs", "browser-server.js"]) copyFileSync(join(server, file), join(dist, file));

const write = (path: string, text: string): void => {
  const file = join(here, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
};
rmSync(join(here, "docs"), { recursive: true, force: true });
for (const [path, text] of referencePages()) write(join("docs", path), text);
write(join("snippets", "sunwright.json"), snippetsFile());
const kinds = kindRows.map(({ kind }) => kind).filter((kind) => !isKeyword(kind));
write(join("syntaxes", "sunwright.tmLanguage.json"), JSON.stringify(textMateGrammar(kinds), undefined, 2));
for (const file of ["LICENSE", "CHANGELOG.md"]) copyFileSync(join(here, "..", file), join(here, file));

for (const file of ["extension.cjs", "extension.browser.js", "server.cjs", "browser-server.js"])
  console.log(`extension/dist/${file}  ${Math.round(statSync(join(dist, file)).size / 1024)} kB`);
