import { readFileSync } from "node:fs";
import { join } from "node:path";
import { marksOf } from "../../language-server/src/editor/diagnostics.js";
import { root } from "../examples/examples.js";
import { type TestWorkspace, uriOf } from "./workspace.js";

/** An example and the files that it uses, by their paths below `examples/`. */
export function filesOf(design: string): Record<string, string> {
  const files: Record<string, string> = {};
  const add = (name: string): void => {
    if (files[name] !== undefined) return;
    const text = readFileSync(join(root, "examples", name), "utf8");
    files[name] = text;
    for (const [, used = ""] of text.matchAll(/^use "(.*)"/gm)) add(join(name, "..", used));
  };
  add(design);
  return files;
}

/** A mark as a reader sees it, without what moves when lines above it change. */
export interface Seen {
  readonly id: string;
  readonly severity: string;
  /** Line number, from 0. */
  readonly line: number;
  readonly at: string;
  readonly message: string;
  /** Whether a rule says so, and not only the text itself. */
  readonly isFinding: boolean;
}

/** What is marked in a file, without the hints of what could not be checked. */
export function seenIn(workspace: TestWorkspace, name: string): Seen[] {
  const text = workspace.text(uriOf(name)) ?? "";
  return marksOf(workspace.view, uriOf(name), { notChecked: "off" }).map(({ id, severity, span, message, thing }) => ({
    id,
    severity,
    line: text.slice(0, span.start).split("\n").length - 1,
    at: text.slice(span.start, span.end),
    message,
    isFinding: thing !== undefined,
  }));
}
