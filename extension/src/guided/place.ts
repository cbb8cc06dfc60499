import { FileType, l10n, type TextDocument, Uri, WorkspaceEdit, window, workspace } from "vscode";
import { exists } from "../files";
import { askChoice, askText, type Option, type Step } from "./steps";

/** Where a new file goes, as far as it has been said. */
export class FilePlace {
  folder: Uri | undefined;
  name: string | undefined;

  /** `folder` may be known from where somebody asked. */
  constructor(folder?: Uri) {
    this.folder = folder;
  }

  get uri(): Uri | undefined {
    return this.folder && this.name ? Uri.joinPath(this.folder, this.name) : undefined;
  }

  /** Asks for folder and name; without a folder in the window there is nothing to ask, and the file is in none. */
  steps(folders: readonly Uri[], suggested: string): Step[] {
    if (folders.length === 0) return [];
    return [this.askFolder(folders), this.askName(suggested)];
  }

  private askFolder(folders: readonly Uri[]): Step {
    const known = [...folders];
    if (this.folder && !known.some((each) => same(each, this.folder))) known.unshift(this.folder);
    const options: Option<Uri | undefined>[] = known.map((value) => ({ label: shownFolder(value), value }));
    options.push({ label: l10n.t("Another folder …"), value: undefined });
    return askChoice<Uri | undefined>({
      placeholder: l10n.t("In which folder"),
      options,
      marked: (value) => value !== undefined && same(value, this.folder),
      keep: async (value) => {
        const folder = value ?? (await this.anotherFolder());
        if (!folder) return "again";
        this.folder = folder;
        return undefined;
      },
    });
  }

  private async anotherFolder(): Promise<Uri | undefined> {
    const chosen = await window.showOpenDialog({ canSelectFiles: false, canSelectFolders: true });
    return chosen?.[0];
  }

  private askName(suggested: string): Step {
    return askText({
      prompt: l10n.t("Name of the file. Nothing that is there already is written over."),
      placeholder: suggested,
      value: this.name ?? suggested,
      problem: (answer) => this.nameProblem(withEnding(answer)),
      keep: (answer) => {
        this.name = answer === "" ? undefined : withEnding(answer);
      },
    });
  }

  private async nameProblem(name: string): Promise<string | undefined> {
    if (!/^[^\\/:*?"<>|]+\.sun$/.test(name) || name.startsWith("."))
      return l10n.t('A file is called something like cottage.sun, without \\ / : * ? " < > |.');
    const uri = Uri.joinPath(this.folder!, name);
    return (await exists(uri)) ? l10n.t("There is a file {0} already. Choose another name.", name) : undefined;
  }
}

/** The folders of the window, and those right below them. */
export async function knownFolders(): Promise<Uri[]> {
  const found: Uri[] = [];
  for (const { uri } of workspace.workspaceFolders ?? []) {
    found.push(uri);
    const entries = await Promise.resolve(workspace.fs.readDirectory(uri)).catch(() => []);
    for (const [name, type] of entries)
      if ((type & FileType.Directory) !== 0 && !name.startsWith(".") && name !== "node_modules")
        found.push(Uri.joinPath(uri, name));
  }
  return found;
}

/** Makes a file with a text, or a document that is in no file yet; undefined where there was a file in the meantime. */
export async function makeFile(uri: Uri | undefined, content: string): Promise<TextDocument | undefined> {
  if (!uri) return workspace.openTextDocument({ language: "sunwright", content });
  const edit = new WorkspaceEdit();
  edit.createFile(uri, { overwrite: false, ignoreIfExists: false, contents: new TextEncoder().encode(content) });
  if (await workspace.applyEdit(edit)) return workspace.openTextDocument(uri);
  void window.showErrorMessage(l10n.t("{0} could not be made. Nothing was written.", shownFolder(uri)));
  return undefined;
}

function shownFolder(uri: Uri): string {
  const relative = workspace.asRelativePath(uri, true);
  return relative === uri.fsPath ? uri.fsPath : relative;
}

function withEnding(name: string): string {
  return name === "" || name.endsWith(".sun") ? name : `${name}.sun`;
}

function same(a: Uri, b: Uri | undefined): boolean {
  return a.toString() === b?.toString();
}
