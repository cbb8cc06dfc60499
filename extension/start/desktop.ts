import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { onPath, root, runScript } from "./programs.js";

/** Opens a folder in the VS Code that is installed here, with the packaged extension. Throws an Error where there is none. */
export function openDesktop(folder: string): void {
  const code = desktopCode();
  runScript("package");
  const file = join(root, "extension", "sunwright.vsix");
  for (const words of [["--install-extension", file, "--force"], [folder]]) {
    const { status } = spawnSync(code, words, { stdio: "inherit", shell: process.platform === "win32" });
    if (status !== 0) throw new Error(`"code ${words.join(" ")}" failed.`);
  }
}

/** The program of the VS Code that is installed here; throws an Error where there is none. */
export function desktopCode(): string {
  const code = onPath("code");
  if (!code) throw new Error('There is no "code" on the path. Without --desktop the editor opens in the browser.');
  return code;
}
