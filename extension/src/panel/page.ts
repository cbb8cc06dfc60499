import { env, l10n, Uri, type Webview } from "vscode";

/** Folder of what the page loads, below the extension: nothing else can be read from it. */
export const pageFolder = ["dist", "panel"] as const;

/**
 * The page of the panel. Its policy lets in our own script and style sheets and nothing else: no other address, no code
 * from text, no styles in attributes.
 */
export function panelPage(webview: Webview, extension: Uri): string {
  const at = (name: string): string => webview.asWebviewUri(Uri.joinPath(extension, ...pageFolder, name)).toString();
  const nonce = randomWord();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="${l10n.bundle ? env.language : "en"}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${at("colours.css")}">
<link rel="stylesheet" href="${at("main.css")}">
<title>Sunwright</title>
</head>
<body>
<div id="panel"${wordsOf(l10n.bundle)}></div>
<script nonce="${nonce}" src="${at("main.js")}"></script>
</body>
</html>`;
}

/** The words of the interface for the page; none where they are those that stand in the program. */
function wordsOf(bundle: typeof l10n.bundle): string {
  if (!bundle) return "";
  return ` data-words="${JSON.stringify(bundle).replaceAll("&", "&amp;").replaceAll('"', "&quot;")}"`;
}

function randomWord(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
