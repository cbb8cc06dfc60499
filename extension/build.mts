import { copyFileSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { isKeyword, markdownFenceGrammar, textMateGrammar } from "@sunwright/grammar";
import { build } from "esbuild";
import { kindRows } from "../language-server/src/design/schema/index.js";
import { referencePages } from "../language-server/src/reference/index.js";
import { thirdPartyNotices } from "./notices.mjs";
import { panelColours } from "./panel-colours.mjs";
import { interfaceWords } from "./words.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const server = join(here, "..", "language-server", "dist");
const dist = join(here, "dist");

rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });

const common = { bundle: true, minify: true, external: ["vscode"], logLevel: "warning", metafile: true } as const;
const forNode = await build({
  ...common,
  entryPoints: [join(here, "src", "extension.ts")],
  outfile: join(dist, "extension.cjs"),
  platform: "node",
  format: "cjs",
  target: "node20",
});
const forBrowser = await build({
  ...common,
  entryPoints: [join(here, "src", "extension.browser.ts")],
  outfile: join(dist, "extension.browser.js"),
  platform: "browser",
  format: "cjs",
  target: "es2022",
});
const forPanel = await build({
  ...common,
  entryPoints: [join(here, "panel", "main.ts"), join(here, "panel", "main.css")],
  outdir: join(dist, "panel"),
  platform: "browser",
  format: "iife",
  target: "es2022",
});
const fromServer = ["server.cjs", "server-program.cjs", "browser-server.js", "drawing-worker.js"] as const;
for (const file of fromServer) copyFileSync(join(server, file), join(dist, file));

const write = (path: string, text: string): void => {
  const file = join(here, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
};
rmSync(join(here, "docs"), { recursive: true, force: true });
for (const [path, text] of referencePages()) write(join("docs", path), text);
const kinds = kindRows.map(({ kind }) => kind).filter((kind) => !isKeyword(kind));
write(join("syntaxes", "sunwright.tmLanguage.json"), JSON.stringify(textMateGrammar(kinds), undefined, 2));
write(join("syntaxes", "markdown-fence.tmLanguage.json"), JSON.stringify(markdownFenceGrammar(), undefined, 2));
write(join("dist", "panel", "colours.css"), panelColours());
copyFileSync(join(here, "preview", "preview.css"), join(dist, "preview.css"));
const speaking = [join(here, "src"), join(here, "panel"), join(here, "..", "language-server", "src", "editor")];
write(join("l10n", "bundle.l10n.json"), JSON.stringify(await interfaceWords(speaking), undefined, 2));
const bundled = [forNode, forBrowser, forPanel].flatMap(({ metafile }) =>
  Object.keys(metafile.inputs).map((file) => resolve(file)),
);
const inServers: Record<string, string[]> = JSON.parse(readFileSync(join(server, "bundled.json"), "utf8"));
const ofServers = ["server", "browser-server", "drawing-worker"].flatMap((name) => inServers[name]!);
write("ThirdPartyNotices.txt", thirdPartyNotices([...bundled, ...ofServers]));
for (const file of ["LICENSE", "CHANGELOG.md"]) copyFileSync(join(here, "..", file), join(here, file));

for (const file of ["extension.cjs", "extension.browser.js", join("panel", "main.js"), ...fromServer])
  console.log(`extension/dist/${file}  ${Math.round(statSync(join(dist, file)).size / 1024)} kB`);
