import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createVSIX } from "@vscode/vsce";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { root } from "../../extension/start/programs.js";
import { rules } from "../../language-server/src/rules/index.js";
import { filesOf } from "./vsix.js";

const folder = mkdtempSync(join(tmpdir(), "sunwright-package-"));
const vsix = join(folder, "sunwright.vsix");
let files: ReadonlyMap<string, Uint8Array>;

const text = (path: string) => new TextDecoder().decode(files.get(`extension/${path}`));

beforeAll(async () => {
  await createVSIX({
    cwd: join(root, "extension"),
    packagePath: vsix,
    dependencies: false,
    allowMissingRepository: true,
    rewriteRelativeLinks: false,
  });
  files = filesOf(readFileSync(vsix));
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the packaged extension", () => {
  test("stays small", () => {
    // Two of five parts are the layout engine, the faces of PDFs and what writes these; a tenth is pictures.
    expect(statSync(vsix).size).toBeLessThan(2_400_000);
    for (const server of ["dist/server-program.cjs", "dist/browser-server.js"])
      expect(files.get(`extension/${server}`)!.length).toBeLessThan(1_500_000);
    // What the page of the panel loads each time it is shown.
    expect(files.get("extension/dist/panel/main.js")!.length).toBeLessThan(100_000);
  });

  test("holds what it needs and nothing else", () => {
    const known = [
      /^\[Content_Types\]\.xml$/,
      /^extension\.vsixmanifest$/,
      /^extension\/(package\.json|language-configuration\.json|readme\.md|changelog\.md|LICENSE\.txt)$/i,
      /^extension\/ThirdPartyNotices\.txt$/,
      /^extension\/dist\/(extension\.cjs|extension\.browser\.js|server(-program)?\.cjs|browser-server\.js|drawing-worker\.js)$/,
      /^extension\/dist\/panel\/(main\.js|main\.css|colours\.css)$/,
      /^extension\/dist\/preview\.css$/,
      /^extension\/docs\/([\w-]+\/)?[\w-]+\.md$/,
      /^extension\/(package\.nls|l10n\/bundle\.l10n)\.json$/,
      /^extension\/media\/walkthrough\/[\w-]+\.svg$/,
      /^extension\/icons\/[\w-]+\.(png|svg)$/,
      /^extension\/media\/[\w-]+\.(png|svg|js|css)$/,
      /^extension\/syntaxes\/(sunwright|markdown-fence)\.tmLanguage\.json$/,
    ];
    expect([...files.keys()].filter((path) => !known.some((pattern) => pattern.test(path)))).toEqual([]);
  });

  test("has every file that its manifest names", () => {
    const manifest = JSON.parse(text("package.json"));
    const named: string[] = JSON.stringify(manifest).match(/"\.?\/?[\w./-]+\.(cjs|js|json|png|svg)"/g) ?? [];
    expect(named.length).toBeGreaterThan(6);
    for (const name of named) {
      const path = JSON.parse(name).replace(/^\.\//, "");
      expect(files.has(`extension/${path}`), path).toBe(true);
    }
  });

  test("has a page for every rule, and every link between its pages leads somewhere", () => {
    for (const { id } of rules) expect(files.has(`extension/docs/rules/${id}.md`), id).toBe(true);
    for (const path of files.keys()) {
      if (!path.startsWith("extension/docs/") || !path.endsWith(".md")) continue;
      const below = path.slice("extension/".length);
      for (const [, link] of text(below).matchAll(/\]\(([^)#:]+\.md)/g)) {
        const target = new URL(link!, `file:///${path}`).pathname.slice(1);
        expect(files.has(target), `${link} in ${path}`).toBe(true);
      }
    }
  });

  test("names the licence of every package that went into it", () => {
    const notices = text("ThirdPartyNotices.txt");
    for (const name of [
      ...["langium", "chevrotain", "vscode-languageclient", "vscode-languageserver"],
      ...["@vscode/l10n", "elkjs", "fontkit", "markdown-it", "morphdom", "pdfkit", "vscode-jsonrpc"],
    ])
      expect(notices).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+ \\(`, "m"));
    // It carries no text of its licence.
    expect(notices).toMatch(/^dfa [\d.]+ \(MIT\)\n\nMIT License\n\nCopyright \(c\) Devon Govett\n\nPermission is/m);
  });

  test("says how it behaves where nothing is trusted and nothing is on a disk", () => {
    const { capabilities, extensionKind, browser, main } = JSON.parse(text("package.json"));
    expect(capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
    expect(extensionKind).toEqual(["workspace"]);
    expect([main, browser]).toEqual(["./dist/extension.cjs", "./dist/extension.browser.js"]);
  });

  test("tells nothing of the machine it was built on", () => {
    for (const [path, content] of files) {
      if (path.endsWith(".png")) continue;
      expect(new TextDecoder().decode(content).includes(root), path).toBe(false);
    }
  });
});
