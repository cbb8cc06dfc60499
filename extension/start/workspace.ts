import { cpSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { root } from "./programs.js";

export interface Workspace {
  readonly folder: string;
  /** What the editor calls it. */
  readonly name: string;
  /** The file to begin with, with a slash before. */
  readonly first: readonly string[];
  /** What the user should know about it. */
  readonly note: string;
  tidy(): void;
}

/** The folder that the editor opens: the user's own, or a copy of the examples to try things on. */
export function workspace(own: string | undefined): Workspace {
  if (own !== undefined) {
    const folder = resolve(process.env.INIT_CWD ?? process.cwd(), own);
    if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) throw new Error(`${folder} is no folder.`);
    return {
      folder,
      name: basename(folder) || "folder",
      first: [],
      note: `Edits are saved in ${folder}`,
      tidy: () => {},
    };
  }
  const folder = mkdtempSync(join(tmpdir(), "sunwright-"));
  cpSync(join(root, "examples"), folder, { recursive: true });
  return {
    folder,
    name: "examples",
    first: ["/alder-cottage/alder-cottage.sun"],
    note: "A copy of the examples, thrown away at the end. Your own designs: npm start -- FOLDER",
    tidy: () => rmSync(folder, { recursive: true, force: true }),
  };
}
