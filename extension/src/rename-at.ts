import { commands, type Disposable, Position, Selection, Uri, window } from "vscode";

/** What the server asks for behind an edit that had to make up a name. */
export const renameCommand = "sunwright.renameAt";

/** Puts the cursor on a name and asks for a better one. */
export function registerRenameAt(): Disposable {
  return commands.registerCommand(renameCommand, async (uri: string, at: { line: number; character: number }) => {
    const editor = await window.showTextDocument(Uri.parse(uri));
    const position = new Position(at.line, at.character);
    editor.selection = new Selection(position, position);
    await commands.executeCommand("editor.action.rename", [editor.document.uri, position]);
  });
}
