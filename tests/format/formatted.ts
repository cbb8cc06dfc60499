import type { Declaration } from "../../language-server/src/design/model.js";
import { type FormatEdit, format } from "../../language-server/src/format/format.js";
import { piecesOf } from "../../language-server/src/format/pieces.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

export function fileOf(text: string): SourceFile {
  const file = new SourceFile("file:///a.sun", parser);
  file.update(text);
  return file;
}

export function formatted(text: string): string {
  return format(text, fileOf(text).fragments).text;
}

/** A text after edits in its order that do not overlap. */
export function withEdits(text: string, edits: readonly FormatEdit[]): string {
  let result = "";
  let at = 0;
  for (const { start, end, text: own } of edits) {
    if (start < at) throw new Error(`edits overlap at ${start}`);
    result += text.slice(at, start) + own;
    at = end;
  }
  return result + text.slice(at);
}

/** What a text declares, without where it is written, and how comments are indented. */
export function meaningOf(text: string): unknown {
  return fileOf(text).fragments.flatMap(({ declarations }) => declarations.map(withoutPlaces));
}

export function problemsOf(text: string): string[] {
  return fileOf(text).fragments.flatMap(({ problems }) => problems.map(({ id }) => id));
}

function withoutPlaces(declaration: Declaration): unknown {
  return JSON.parse(
    JSON.stringify(declaration, (key, value) =>
      key === "chunk" || key === "from" || key === "to" ? placeless(value) : value,
    ),
  );
}

/** `from` and `to` are offsets in a place and mentions in a run. */
function placeless(value: unknown): unknown {
  return typeof value === "object" && value !== null && "path" in value ? value : undefined;
}

/** Every comment of a text that parses, without the blanks that its lines begin and end with. */
export function commentsOf(text: string): string[] {
  return piecesOf(text, 0, text.length, 0)
    .filter(({ is }) => is === "line-comment" || is === "block-comment")
    .map(({ written }) =>
      written
        .split(/\r\n|\r|\n/)
        .map((line) => line.trim())
        .join("\n"),
    );
}
