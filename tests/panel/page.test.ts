import { beforeEach, expect, test, vi } from "vitest";
import { panelPage } from "../../extension/src/panel/page.js";

const editor = vi.hoisted(() => ({
  env: { language: "de" },
  l10n: { bundle: undefined as Record<string, string> | undefined },
  Uri: { joinPath: (...parts: string[]) => parts.join("/") },
}));
vi.mock("vscode", () => editor);

beforeEach(() => {
  editor.l10n.bundle = undefined;
});

function page(): string {
  const webview = { cspSource: "own:", asWebviewUri: (uri: string) => uri };
  return panelPage(webview as never, "own:/extension" as never);
}

test("without a translation the page is English and carries no words", () => {
  expect(page()).toContain('<html lang="en">');
  expect(page()).toContain('<div id="panel"></div>');
});

test("with one it says its language, and every word arrives as it is", () => {
  const words = { Fit: 'Alles "auf einmal"', "{0} open": "{0} &quot; > offen & </div>" };
  editor.l10n.bundle = words;
  expect(page()).toContain('<html lang="de">');
  const [, written = ""] = /<div id="panel" data-words="([^"]*)"><\/div>/.exec(page())!;
  expect(JSON.parse(written.replaceAll("&quot;", '"').replaceAll("&amp;", "&"))).toEqual(words);
});
