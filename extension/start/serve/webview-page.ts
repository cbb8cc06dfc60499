import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

/** Where the frame of panels and previews lies among VS Code's static files. */
export const webviewFolder = "out/vs/workbench/contrib/webview/browser/pre/";

const check = "const hostname = location.hostname;";

/**
 * The page in which VS Code shows panels and previews. It wants a host name of its own for each, which browsers refuse a
 * service worker in a frame of another site; here it may also have the editor's own origin, since one server on this
 * machine serves both. Throws an Error where the page is not as it was when this was written.
 */
export async function webviewPage(code: string): Promise<string> {
  const page = await readFile(join(code, webviewFolder, "index.html"), "utf8");
  const [, script] = /<script[^>]*>([\s\S]*?)<\/script>/.exec(page) ?? [];
  if (!script?.includes(check)) throw new Error("VS Code's page for panels has another form than expected");
  const changed = script.replace(check, `if (parentOrigin === location.origin) return start(parentOrigin);\n${check}`);
  return page.replace(hash(script), hash(changed)).replace(script, () => changed);
}

/** As the page's policy names the one script that may run. */
function hash(script: string): string {
  return `sha256-${createHash("sha256").update(script).digest("base64")}`;
}
