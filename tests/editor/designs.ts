import {
  commands,
  type Diagnostic,
  languages,
  type Position,
  Range,
  Selection,
  type TextDocument,
  Uri,
  window,
  workspace,
} from "vscode";
import { until } from "./until";

export const extensionId = "sunwright.sunwright";

/** The address of something in the first folder. */
export function at(path: string): Uri {
  return Uri.joinPath(workspace.workspaceFolders![0]!.uri, path);
}

export async function write(path: string, text: string): Promise<Uri> {
  await workspace.fs.writeFile(at(path), new TextEncoder().encode(text));
  return at(path);
}

export async function read(path: string): Promise<string> {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await workspace.fs.readFile(at(path)));
}

/** Opens a file in the editor, in front of all others. */
export async function show(path: string | Uri): Promise<TextDocument> {
  const document = await workspace.openTextDocument(typeof path === "string" ? at(path) : path);
  await window.showTextDocument(document, { preview: false });
  return document;
}

/** Closes everything and forgets what was not saved. */
export async function closeAll(): Promise<void> {
  for (const document of workspace.textDocuments.filter(({ isDirty }) => isDirty)) {
    await window.showTextDocument(document, { preview: false });
    await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
  }
  await commands.executeCommand("workbench.action.closeAllEditors");
}

/** Puts a text in the place of another, as typing would, without saving. */
export async function change(document: TextDocument, from: string, to: string): Promise<void> {
  const editor = await window.showTextDocument(document, { preview: false });
  await editor.edit((edit) => edit.replace(rangeOf(document, from), to));
}

/** Where a text is written, the first time. */
export function rangeOf(document: TextDocument, text: string): Range {
  const start = document.getText().indexOf(text);
  if (start < 0) throw new Error(`"${text}" is not in ${document.uri.path}`);
  return new Range(document.positionAt(start), document.positionAt(start + text.length));
}

/** Puts the cursor somewhere in the editor in front, so that the next key that is pressed goes there. */
export async function placeCursor(position: Position): Promise<void> {
  const editor = window.activeTextEditor!;
  editor.selection = new Selection(position, position);
  editor.revealRange(editor.selection);
  // The window is told of the cursor without an answer; a command that is answered comes behind it.
  await commands.executeCommand("workbench.action.focusActiveEditorGroup");
}

export function positionOf(document: TextDocument, text: string): Position {
  return rangeOf(document, text).start;
}

export function idOf({ code }: Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

/** What is shown of a file, without the hints of what could not be checked. */
export function findings(uri: Uri): Diagnostic[] {
  return languages.getDiagnostics(uri).filter((diagnostic) => idOf(diagnostic) !== "not-checked");
}

export function untilFound(uri: Uri, id: string): Promise<Diagnostic> {
  return until(`${id} is found`, () => findings(uri).find((diagnostic) => idOf(diagnostic) === id));
}

export function untilGone(uri: Uri, id: string): Promise<boolean> {
  return until(`${id} is no more found`, () => !findings(uri).some((diagnostic) => idOf(diagnostic) === id));
}
