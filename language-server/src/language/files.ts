import { type FileSystemProvider, URI, UriUtils } from "langium";

/** Why a file cannot be used. */
export type ReadFailure = "missing" | "folder" | "unreadable" | "no-design" | "no-text";

export type ReadResult = { readonly text: string } | { readonly failure: ReadFailure };

/** Reads a design file; never throws. */
export async function readDesign(files: FileSystemProvider, uri: string): Promise<ReadResult> {
  const where = URI.parse(uri);
  if (UriUtils.extname(where) !== ".sun") return { failure: "no-design" };
  try {
    return { text: await files.readFile(where) };
  } catch {
    return { failure: await whyNot(files, where) };
  }
}

async function whyNot(files: FileSystemProvider, where: URI): Promise<ReadFailure> {
  try {
    return (await files.stat(where)).isDirectory ? "folder" : "unreadable";
  } catch (error) {
    const { code } = error as { code?: unknown };
    // A folder on the way that may not be entered hides whether the file is there.
    return code === "EACCES" || code === "EPERM" ? "unreadable" : "missing";
  }
}

/** Address of a file named by a `use` line: its path is relative to the folder of the file that uses it. */
export function resolveUse(from: string, path: string): string {
  return UriUtils.resolvePath(UriUtils.dirname(URI.parse(from)), path.replaceAll("\\", "/")).toString();
}

/** The path by which one file would use another. */
export function pathBetween(from: string, to: string): string {
  return UriUtils.relative(UriUtils.dirname(URI.parse(from)), URI.parse(to));
}

export function baseName(uri: string): string {
  return UriUtils.basename(URI.parse(uri));
}
