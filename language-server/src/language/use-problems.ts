import type { Problem } from "../design/model.js";
import { baseName, pathBetween, type ReadFailure } from "./files.js";
import type { Use, UseGraph } from "./uses.js";

/** What is known about files when the `use` lines of one are judged. */
export interface KnownFiles {
  readonly graph: UseGraph;
  failure(uri: string): ReadFailure | undefined;
  uris(): Iterable<string>;
}

const wrong: Readonly<Record<ReadFailure, string>> = {
  missing: "does not exist",
  folder: "is a folder, not a file",
  unreadable: "cannot be read, perhaps for want of permission",
  "no-design": "is not a design file: its name does not end in .sun",
  "no-text": "is no text, or is not written in UTF-8",
};

/** The problem of one `use` line, or undefined. */
export function useProblem(uri: string, { declaration, target }: Use, files: KnownFiles): Problem | undefined {
  const { path, pathPlace: place } = declaration;
  const failure = files.failure(target);
  if (failure !== undefined) {
    return {
      id: failure === "missing" ? "file-missing" : "file-unreadable",
      severity: "error",
      message: `"${path}" ${wrong[failure]}, so nothing it declares is known here. The path is taken from the folder of this file; correct it, or delete the line.`,
      place,
      suggestions: failure === "missing" ? sameNames(uri, target, files) : [],
    };
  }
  if (files.graph.reach(target).includes(uri)) {
    return {
      id: "use-cycle",
      severity: "error",
      message:
        target === uri
          ? "This file uses itself, which adds nothing. Delete the line."
          : `"${path}" uses this file in turn, so neither stands by itself. Move what both need into a third file, and use that.`,
      place,
    };
  }
  return undefined;
}

/** Files of the same name elsewhere: a path that is one folder off is the usual slip. */
function sameNames(uri: string, target: string, files: KnownFiles): { title: string; text: string }[] {
  const name = baseName(target);
  const found = [...files.uris()].filter((other) => other !== uri && baseName(other) === name);
  return found.slice(0, 3).map((other) => {
    const path = `"${pathBetween(uri, other)}"`;
    return { title: `Change to ${path}`, text: path };
  });
}
