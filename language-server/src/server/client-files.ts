import { type FileSystemNode, type FileSystemProvider, type URI, UriUtils } from "langium";
import type { Connection } from "vscode-languageserver";

/**
 * Files of a server that runs in a web worker and has none of its own: it asks the client, which knows the workspace.
 *
 * `sunwright/readFile` takes `{ uri }` and gives the text, or null where there is no such file; `sunwright/readFolder`
 * takes `{ uri }` and gives `{ name, isFolder }` of each entry. A client that answers neither leaves the server with the
 * open documents.
 */
export class ClientFileSystem implements FileSystemProvider {
  constructor(private readonly connection: Connection) {}

  async readFile(uri: URI): Promise<string> {
    const text = await this.connection.sendRequest<unknown>("sunwright/readFile", { uri: uri.toString() });
    // A client may say so with an error or with nothing.
    if (typeof text !== "string") throw new Error(`There is no ${uri.toString()}`);
    return text;
  }

  async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    const entries = await this.connection
      .sendRequest<{ name: string; isFolder: boolean }[]>("sunwright/readFolder", { uri: uri.toString() })
      .catch(() => []);
    return entries.map(({ name, isFolder }) => ({
      uri: UriUtils.joinPath(uri, name),
      isFile: !isFolder,
      isDirectory: isFolder,
    }));
  }

  async stat(uri: URI): Promise<FileSystemNode> {
    const name = UriUtils.basename(uri);
    const entries = await this.readDirectory(UriUtils.dirname(uri));
    const entry = entries.find((candidate) => UriUtils.basename(candidate.uri) === name);
    if (!entry) throw new Error(`There is no ${uri.toString()}`);
    return entry;
  }

  async exists(uri: URI): Promise<boolean> {
    return this.stat(uri).then(
      () => true,
      () => false,
    );
  }

  async readBinary(uri: URI): Promise<Uint8Array> {
    return new TextEncoder().encode(await this.readFile(uri));
  }

  statSync(): never {
    return onlyLater();
  }
  existsSync(): boolean {
    return false;
  }
  readBinarySync(): never {
    return onlyLater();
  }
  readFileSync(): never {
    return onlyLater();
  }
  readDirectorySync(): FileSystemNode[] {
    return [];
  }
}

function onlyLater(): never {
  throw new Error("The client's files cannot be read without waiting");
}
