import type { Declaration, Fragment, Problem } from "../../language-server/src/design/model.js";
import type { ChunkParser } from "../../language-server/src/language/chunk-parser.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

let parser: ChunkParser | undefined;

/** Reads a text from scratch. */
export function read(text: string): readonly Fragment[] {
  parser ??= createChunkParser();
  const file = new SourceFile("file:///a.sun", parser);
  file.update(text);
  return file.fragments;
}

export function declarations(text: string): Declaration[] {
  return read(text).flatMap((fragment) => fragment.declarations);
}

/** Id, marked words, message and replacements of everything wrong with a text. */
export function problems(text: string): { id: string; at: string; message: string; fixes: string[] }[] {
  return read(text).flatMap((fragment) => fragment.problems.map((problem) => shown(text, problem)));
}

function shown(text: string, { id, place, message, suggestions = [] }: Problem) {
  const { chunk, from, to } = place;
  return {
    id,
    at: text.slice(chunk.start + from, chunk.start + to),
    message,
    fixes: suggestions.map((fix) => fix.text),
  };
}
