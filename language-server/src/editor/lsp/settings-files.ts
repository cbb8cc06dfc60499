import { type FileSystemProvider, TextDocument, URI, UriUtils } from "langium";
import { type Connection, DiagnosticSeverity } from "vscode-languageserver";
import {
  noSeverities,
  type ReadSeverities,
  readSettingsText,
  type SettingsFault,
  type Severities,
  settingsFile,
} from "../../assessment/severities.js";

/** Higher than this no folder is looked at. */
const deepest = 64;

/**
 * The settings files beside and above the designs. They are read when a design first asks, and again when they change;
 * until one is read, a design has its rules' own severities.
 */
export class SettingsFiles {
  /** By folder; null where there is no such file. */
  private readonly known = new Map<string, ReadSeverities | null>();
  private readonly reading = new Set<string>();
  private readonly byEntry = new Map<string, Severities>();

  constructor(
    private readonly files: FileSystemProvider,
    private readonly connection: () => Connection | undefined,
    /** Called when a design may have to be shown otherwise. */
    private readonly changed: () => void,
  ) {}

  /** What the nearest settings file says for a design. */
  of(entry: string): Severities {
    let severities = this.byEntry.get(entry);
    if (!severities) {
      severities = this.nearest(entry);
      this.byEntry.set(entry, severities);
    }
    return severities;
  }

  isSettings(uri: string): boolean {
    return UriUtils.basename(URI.parse(uri)) === settingsFile;
  }

  /** Reads a settings file again that was changed, written or deleted. */
  async update(uri: string): Promise<void> {
    await this.read(UriUtils.dirname(URI.parse(uri)));
  }

  private nearest(entry: string): Severities {
    for (const folder of foldersAbove(entry)) {
      const name = folder.toString();
      const known = this.known.get(name);
      if (known) return known.severities;
      if (known === undefined && !this.reading.has(name)) void this.read(folder);
    }
    return noSeverities;
  }

  private async read(folder: URI): Promise<void> {
    const name = folder.toString();
    const uri = UriUtils.joinPath(folder, settingsFile);
    this.reading.add(name);
    // Most folders have none: that is no failure.
    const text = await this.files.readFile(uri).catch(() => undefined);
    this.reading.delete(name);
    const before = this.known.get(name);
    const read = text === undefined ? null : readSettingsText(text.replace(/^\uFEFF/, ""));
    this.known.set(name, read);
    if (read || before) {
      this.tell(uri.toString(), text ?? "", read?.faults ?? []);
      this.byEntry.clear();
      this.changed();
    }
  }

  private tell(uri: string, text: string, faults: readonly SettingsFault[]): void {
    const document = TextDocument.create(uri, "json", 0, text);
    const diagnostics = faults.map(({ message, word }) => {
      const found = word === undefined ? -1 : text.indexOf(JSON.stringify(word));
      const start = Math.max(0, found);
      const end = found < 0 ? text.length : found + JSON.stringify(word).length;
      return {
        range: { start: document.positionAt(start), end: document.positionAt(end) },
        severity: DiagnosticSeverity.Error,
        source: "sunwright",
        code: "settings",
        message,
      };
    });
    void this.connection()?.sendDiagnostics({ uri, diagnostics });
  }
}

function foldersAbove(entry: string): URI[] {
  const start = URI.parse(entry);
  // A text that was never saved lies in no folder.
  if (start.scheme === "untitled" || !start.path.startsWith("/")) return [];
  const folders: URI[] = [];
  let folder = UriUtils.dirname(start);
  for (let depth = 0; depth < deepest; depth++) {
    folders.push(folder);
    const above = UriUtils.dirname(folder);
    if (above.toString() === folder.toString() || above.path === "" || above.path === ".") break;
    folder = above;
  }
  return folders;
}
