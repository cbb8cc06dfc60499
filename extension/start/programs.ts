import { spawn, spawnSync } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** Runs one of the project's npm scripts; shows what it says only where it fails. Throws an Error then. */
export function runScript(name: string): void {
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const { status, stdout, stderr } = spawnSync(npm, ["run", "--silent", name], {
    cwd: root,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  if (status !== 0) throw new Error(`npm run ${name} failed:\n${stdout}${stderr}`);
}

/** What the command line says about some files, and its exit code. */
export function sunwright(...words: readonly string[]): { readonly text: string; readonly code: number } {
  const program = join(root, "language-server", "dist", "cli.mjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], { cwd: root, encoding: "utf8" });
  return { text: stdout + stderr, code: status ?? 2 };
}

/** Where a program is that the user can call by name. */
export function onPath(name: string): string | undefined {
  const endings = process.platform === "win32" ? [".cmd", ".exe"] : [""];
  for (const folder of (process.env.PATH ?? "").split(delimiter))
    for (const ending of endings) {
      const file = join(folder, name + ending);
      try {
        accessSync(file, constants.X_OK);
        return file;
      } catch {
        // Not here: look in the next folder.
      }
    }
  return undefined;
}

/** Opens an address in the user's browser where there is a display; says whether it tried. */
export function openInBrowser(address: string): boolean {
  const [program, ...words] =
    process.platform === "darwin"
      ? ["open", address]
      : process.platform === "win32"
        ? ["cmd", "/c", "start", "", address]
        : ["xdg-open", address];
  const hasDisplay = process.platform !== "linux" || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY);
  if (!hasDisplay || !onPath(program!)) return false;
  const child = spawn(program!, words, { stdio: "ignore", detached: true });
  child.on("error", () => {});
  child.unref();
  return true;
}
