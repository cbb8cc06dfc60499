import type { Dirent } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { relative, resolve, sep } from "node:path";
import { glob, isDynamicPattern } from "tinyglobby";
import type { Unreadable } from "./report/report.js";

/** Which files were asked for, and what of it does not exist or cannot be looked into. */
export interface Inputs {
  /** Absolute paths, each once, in the order of the arguments and by name below a folder. */
  readonly files: readonly string[];
  readonly unreadable: readonly Unreadable[];
}

const ending = ".sun";

/** Turns FILE, DIR and GLOB arguments into files. A folder means all `.sun` files below it. */
export async function findFiles(args: readonly string[], folder: string): Promise<Inputs> {
  const files = new Set<string>();
  const unreadable: Unreadable[] = [];
  for (const arg of args) {
    const found = await find(arg, folder);
    for (const file of found.files) files.add(file);
    unreadable.push(...found.unreadable);
  }
  return { files: [...files], unreadable };
}

async function find(arg: string, folder: string): Promise<Inputs> {
  // An empty word, from a variable without a value as a rule, would mean the whole folder.
  if (arg === "") return refused('""', "names nothing. Name a file, a folder or a pattern.");
  const path = resolve(folder, arg);
  try {
    const found = await stat(path);
    if (found.isDirectory()) return await inFolder(path, arg, folder);
    if (!arg.endsWith(ending)) return refused(arg, `is no ${ending} file. Name a design, or the folder it is in.`);
    if (!found.isFile()) return refused(arg, "is no ordinary file.");
    return { files: [path], unreadable: [] };
  } catch (error) {
    if (codeOf(error) !== "ENOENT") return refused(arg, whyUnreadable(error));
    return isDynamicPattern(arg) ? await byPattern(arg, folder) : refused(arg, whyUnreadable(error));
  }
}

async function inFolder(path: string, arg: string, folder: string): Promise<Inputs> {
  const found = await walk([`**/*${ending}`], path, folder);
  if (found.files.length + found.unreadable.length > 0) return found;
  return refused(arg, `holds no ${ending} file, nor does any folder below it.`);
}

async function byPattern(arg: string, folder: string): Promise<Inputs> {
  const pattern = sep === "\\" ? arg.replaceAll("\\", "/") : arg;
  const found = await walk([pattern], folder, folder);
  const files = found.files.filter((file) => file.endsWith(ending));
  if (files.length + found.unreadable.length > 0) return { ...found, files };
  return refused(arg, `matches no ${ending} file. Two stars, as in **/*${ending}, reach into folders.`);
}

/** Walks a folder; folders that cannot be opened are told instead of passed over. */
async function walk(patterns: readonly string[], cwd: string, folder: string): Promise<Inputs> {
  const unreadable: Unreadable[] = [];
  const list = (path: string, _options: unknown, done: (error: null, entries: readonly Entry[]) => void): void => {
    readdir(path, { withFileTypes: true }).then(
      (entries) => done(null, entries.map(linkAsFile)),
      (error) => {
        const file = shown(path, folder);
        unreadable.push({ file, message: `${file} ${whyUnreadable(error)}` });
        done(null, []);
      },
    );
  };
  const files = await glob(patterns, {
    cwd,
    absolute: true,
    ignore: ["**/node_modules/**"],
    followSymbolicLinks: false,
    fs: { readdir: list as unknown as typeof import("node:fs").readdir },
  });
  return { files: files.map((file) => resolve(file)).sort(byName), unreadable };
}

type Entry = Pick<Dirent, "name" | "isFile" | "isDirectory" | "isSymbolicLink">;

/**
 * Links to files are read like files, and told where they lead nowhere. Links to folders are not followed: they may lead
 * round in circles.
 */
function linkAsFile(entry: Dirent): Entry {
  if (!entry.isSymbolicLink() || !entry.name.endsWith(ending)) return entry;
  return { name: entry.name, isFile: () => true, isDirectory: () => false, isSymbolicLink: () => false };
}

function byName(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function refused(file: string, why: string): Inputs {
  return { files: [], unreadable: [{ file, message: `${file} ${why}` }] };
}

/** A path as people know it: relative to the folder they are in, with slashes. */
export function shown(path: string, folder: string): string {
  const name = relative(folder, path) || ".";
  return sep === "\\" ? name.replaceAll("\\", "/") : name;
}

/** What kept a file from being read, and what to do: the end of a sentence that begins with its name. */
export function whyUnreadable(error: unknown): string {
  switch (codeOf(error)) {
    case "ENOENT":
      return "does not exist. Look at its spelling, and at the folder you are in.";
    case "EACCES":
    case "EPERM":
      return "may not be read by you. Ask for permission to read it.";
    case "EISDIR":
      return "is a folder, not a file.";
    case "ENOTDIR":
      return "lies below something that is a file, not a folder.";
    case "ELOOP":
      return "is a link that leads back to itself.";
    case "EMFILE":
    case "ENFILE":
      return "could not be opened: too many files are open. Check fewer files at once.";
    default:
      return `cannot be read: ${error instanceof Error ? error.message : String(error)}.`;
  }
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && "code" in error ? error.code : undefined;
}
