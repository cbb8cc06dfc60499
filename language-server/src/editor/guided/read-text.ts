import type { Fragment } from "../../design/model.js";
import { format } from "../../format/format.js";
import type { ChunkParser } from "../../language/chunk-parser.js";
import { SourceFile } from "../../language/source-file.js";

/** Reads a text that is in no file. */
export type ReadText = (text: string) => readonly Fragment[];

export function readTextWith(parser: ChunkParser): ReadText {
  return (text) => {
    const file = new SourceFile("untitled:guided.sun", parser);
    file.update(text);
    return file.fragments;
  };
}

/** A text in the one look of the language. */
export function inOneLook(text: string, read: ReadText): string {
  return format(text, read(text)).text;
}
