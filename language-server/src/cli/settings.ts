import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { URI } from "vscode-uri";
import { noSeverities, readSettingsText, type Severities, settingsFile } from "../assessment/severities.js";
import { decode, NotText } from "./decode.js";
import { shown, whyUnreadable } from "./inputs.js";

/** The settings files beside and above designs; each is read once, and what is wrong with it told once. */
export class SettingsFiles {
  private readonly known = new Map<string, Severities | undefined>();

  constructor(
    private readonly folder: string,
    private readonly tell: (told: { readonly file: string; readonly message: string }) => void,
  ) {}

  /** What the nearest settings file says for the design that begins in a file. */
  of(entry: string): Severities {
    for (let folder = dirname(URI.parse(entry).fsPath); ; folder = dirname(folder)) {
      const found = this.in(folder);
      if (found) return found;
      if (dirname(folder) === folder) return noSeverities;
    }
  }

  private in(folder: string): Severities | undefined {
    if (this.known.has(folder)) return this.known.get(folder);
    const severities = this.read(join(folder, settingsFile));
    this.known.set(folder, severities);
    return severities;
  }

  private read(path: string): Severities | undefined {
    const file = shown(path, this.folder);
    try {
      const { severities, faults } = readSettingsText(decode(readFileSync(path)));
      for (const { message } of faults) this.tell({ file, message: `${file}: ${message}` });
      return severities;
    } catch (error) {
      if (error instanceof NotText) this.tell({ file, message: `${file} ${error.message}` });
      else if (!isMissing(error)) this.tell({ file, message: `${file} ${whyUnreadable(error)}` });
      return undefined;
    }
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && "code" in error && (error.code === "ENOENT" || error.code === "ENOTDIR");
}
