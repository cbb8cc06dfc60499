import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../extension/start/programs.js";
import type { SessionSort } from "./sessions.js";

/** The same in every host: what is typed stays unsaved until a test saves it, and nothing comes up by itself. */
export const windowSettings = {
  "editor.hover.delay": 100,
  "editor.minimap.enabled": false,
  "files.autoSave": "off",
  "git.enabled": false,
  "security.workspace.trust.startupPrompt": "never",
  "window.commandCenter": false,
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
};

/** Lays a fresh workspace for a session: a copy of the examples, and beside it whatever tests write. Gives what to open. */
export function layWorkspace({ opens, hasExamples }: SessionSort, folder: string): string | undefined {
  mkdirSync(join(folder, ".vscode"), { recursive: true });
  writeFileSync(join(folder, ".vscode", "settings.json"), JSON.stringify(windowSettings));
  if (hasExamples) {
    writeFileSync(join(folder, "notes.txt"), "No design.\n");
    cpSync(join(root, "examples"), join(folder, "examples"), { recursive: true });
  }
  if (opens === "nothing") return undefined;
  if (opens === "folder") return folder;
  const file = join(folder, "two-houses.code-workspace");
  const folders = [{ path: "." }, { path: "examples/alder-cottage" }, { path: "examples/training" }];
  writeFileSync(file, JSON.stringify({ folders, settings: windowSettings }));
  return file;
}
