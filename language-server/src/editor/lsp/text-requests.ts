import { type FileSystemProvider, UriUtils } from "langium";
import type { Connection } from "vscode-languageserver";
import { type LooseText, type TextPicture, textPicture } from "../diagram/text-picture.js";
import type { Editor } from "./editor.js";

/** `sunwright/textPicture`: what a text that stands in no file gives to draw. */
export function addTextRequests(connection: Connection, editor: Editor): void {
  const { services, view, positions } = editor;
  const { FileSystemProvider } = services.workspace;
  // What is open in the editor is as it stands there.
  const files: Pick<FileSystemProvider, "readFile" | "stat"> = {
    readFile: async (uri) => view.sources.text(uri.toString()) ?? FileSystemProvider.readFile(uri),
    stat: (uri) => FileSystemProvider.stat(uri),
  };
  connection.onRequest("sunwright/textPicture", async (asked: LooseText): Promise<TextPicture> => {
    await services.workspace.WorkspaceManager.ready;
    const found = await textPicture({ ...asked, uri: UriUtils.normalize(asked.uri) }, editor.parser, files);
    return { ...found, files: found.files.map((file) => positions.spelled(file)) };
  });
}
