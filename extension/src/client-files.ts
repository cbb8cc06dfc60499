import { type Disposable, FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

interface Where {
  readonly uri: string;
}

/**
 * A server in a web worker has no files of its own: it asks for those of the workspace, of whatever kind it is. Texts come
 * as they are on the disk, with a byte order mark where there is one, as they do to a server that reads them itself.
 */
export function answerForFiles(client: BaseLanguageClient): Disposable[] {
  const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
  return [
    client.onRequest("sunwright/readFile", async ({ uri }: Where) =>
      decoder.decode(await workspace.fs.readFile(Uri.parse(uri))),
    ),
    client.onRequest("sunwright/readFolder", async ({ uri }: Where) => {
      const entries = await workspace.fs.readDirectory(Uri.parse(uri));
      return entries.map(([name, type]) => ({ name, isFolder: (type & FileType.Directory) !== 0 }));
    }),
  ];
}
