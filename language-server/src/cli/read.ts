import { readFileSync } from "node:fs";
import { URI } from "vscode-uri";
import { createChunkParser } from "../language/parser-module.js";
import { Project } from "../language/project.js";
import { decode, NotText } from "./decode.js";
import { shown, whyUnreadable } from "./inputs.js";
import { Locator } from "./report/locate.js";
import type { Unreadable } from "./report/report.js";

/** The files asked for with everything they use. */
export interface ReadFiles {
  readonly project: Project;
  /** Addresses of those that could be read, in the order asked for. */
  readonly asked: readonly string[];
  readonly unreadable: readonly Unreadable[];
  readonly locator: Locator;
}

/** Reads files by absolute path, and what they use. What cannot be read is told, and the rest goes on. */
export function readFiles(paths: readonly string[], folder: string): ReadFiles {
  const project = new Project(once(createChunkParser));
  const asked: string[] = [];
  const unreadable: Unreadable[] = [];
  for (const path of paths) {
    const uri = URI.file(path).toString();
    const result = readText(path);
    if (result.text === undefined) {
      const file = shown(path, folder);
      project.fail(uri, failureOf(result.error));
      unreadable.push({ file, message: `${file} ${reason(result.error)}` });
    } else {
      project.update(uri, result.text);
      asked.push(uri);
    }
  }
  for (let wanted = project.wantedFiles(); wanted.length > 0; wanted = project.wantedFiles())
    for (const uri of wanted) readUsed(uri, project);
  const locator = new Locator({
    text: (uri) => project.text(uri) ?? "",
    name: (uri) => shown(URI.parse(uri).fsPath, folder),
  });
  return { project, asked, unreadable, locator };
}

/** What goes wrong here is a problem of the `use` line that names the file. */
function readUsed(uri: string, project: Project): void {
  const path = URI.parse(uri).fsPath;
  if (!path.endsWith(".sun")) {
    project.fail(uri, "no-design");
    return;
  }
  const result = readText(path);
  if (result.text === undefined) project.fail(uri, failureOf(result.error));
  else project.update(uri, result.text);
}

function readText(path: string): { readonly text?: string; readonly error?: unknown } {
  try {
    return { text: decode(readFileSync(path)) };
  } catch (error) {
    return { error };
  }
}

function reason(error: unknown): string {
  return error instanceof NotText ? error.message : whyUnreadable(error);
}

function failureOf(error: unknown): Parameters<Project["fail"]>[1] {
  if (error instanceof NotText) return "no-text";
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "ENOENT" || code === "ENOTDIR") return "missing";
  return code === "EISDIR" ? "folder" : "unreadable";
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
