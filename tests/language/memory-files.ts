import { type FileSystemNode, type FileSystemProvider, URI } from "langium";

/** A file system of a few texts, with the ways a real one fails. */
export class MemoryFiles implements FileSystemProvider {
  reads = 0;

  /** By path: a text, or `folder`, or `locked` for a file that may not be read. */
  constructor(readonly files: Map<string, string | { readonly is: "folder" | "locked" }>) {}

  stat(uri: URI): Promise<FileSystemNode> {
    const found = this.files.get(uri.path);
    if (found === undefined) return Promise.reject(Object.assign(new Error("no such file"), { code: "ENOENT" }));
    const isDirectory = typeof found === "object" && found.is === "folder";
    return Promise.resolve({ isFile: !isDirectory, isDirectory, uri });
  }

  exists(uri: URI): Promise<boolean> {
    return Promise.resolve(this.files.has(uri.path));
  }

  readFile(uri: URI): Promise<string> {
    this.reads++;
    const found = this.files.get(uri.path);
    return typeof found === "string" ? Promise.resolve(found) : Promise.reject(new Error("cannot read"));
  }

  readDirectory(uri: URI): Promise<FileSystemNode[]> {
    const inside = [...this.files].filter(([path]) => path.startsWith(`${uri.path}/`));
    return Promise.resolve(
      inside.map(([path, what]) => ({
        uri: URI.file(path),
        isFile: typeof what === "string",
        isDirectory: typeof what === "object" && what.is === "folder",
      })),
    );
  }

  readBinary = never;
  readBinarySync = never;
  readFileSync = never;
  readDirectorySync = never;
  statSync = never;
  existsSync = never;
}

function never(): never {
  throw new Error("designs are read as text, and without blocking");
}
