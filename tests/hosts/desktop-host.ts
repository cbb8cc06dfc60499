import { join } from "node:path";
import { downloadAndUnzipVSCode, resolveCliArgsFromVSCodeExecutablePath } from "@vscode/test-electron";
import { cache } from "./cache.js";
import { run } from "./processes.js";

/** Whether a desktop VS Code has a display to show its window on. */
export const hasDisplay = process.platform !== "linux" || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY);

/** The desktop VS Code, downloaded into the cache; undefined where the network does not give it. */
export async function desktopProgram(): Promise<string | undefined> {
  return downloadAndUnzipVSCode({ cachePath: join(cache, "desktop"), timeout: 30_000 }).catch(() => undefined);
}

/** Installs a packaged extension for a run of its own; gives the words that the run must be called with. */
export function installIntoDesktop(program: string, vsix: string, temporary: string): string[] {
  const own = [`--user-data-dir=${join(temporary, "user")}`, `--extensions-dir=${join(temporary, "extensions")}`];
  const [cli, ...words] = resolveCliArgsFromVSCodeExecutablePath(program);
  run(
    cli!,
    [...words.filter((word) => !/^--(user-data|extensions)-dir/.test(word)), ...own, "--install-extension", vsix],
    {
      cwd: temporary,
    },
  );
  return own;
}
