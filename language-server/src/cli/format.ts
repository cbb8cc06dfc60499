import { readFileSync, writeFileSync } from "node:fs";
import { URI } from "vscode-uri";
import { format } from "../format/format.js";
import { createChunkParser } from "../language/parser-module.js";
import { SourceFile } from "../language/source-file.js";
import type { FormatArguments } from "./arguments.js";
import { decode, NotText } from "./decode.js";
import { findFiles, shown, whyUnreadable } from "./inputs.js";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings.js";
import { printable } from "./text/page.js";

/**
 * Gives files the look of the language, or says which of them do not have it. A declaration that cannot be read stays
 * as it is and is told of; the rest of its file is formatted.
 */
export async function runFormat({ paths, isCheck }: FormatArguments, around: Surroundings): Promise<ExitCode> {
  const inputs = await findFiles(paths, around.folder);
  const parser = createChunkParser();
  let isUnusable = false;
  const refuse = (message: string): void => {
    isUnusable = true;
    around.err(`${printable(message)}\n`);
  };
  for (const { message } of inputs.unreadable) refuse(message);
  let changed = 0;
  let left = 0;
  for (const path of inputs.files) {
    const name = shown(path, around.folder);
    try {
      const bytes = readFileSync(path);
      const text = decode(bytes);
      const file = new SourceFile(URI.file(path).toString(), parser);
      file.update(text);
      const broken = file.fragments.filter((fragment) => fragment.broken);
      for (const { chunk } of broken)
        around.err(`${printable(name)}:${lineOf(text, chunk.start)}: this cannot be read, so it is left as it is.\n`);
      left += broken.length;
      const formatted = format(text, file.fragments).text;
      if (formatted === text) continue;
      changed++;
      if (isCheck) around.out(`${printable(name)} is not formatted\n`);
      else {
        writeFileSync(path, hasMark(bytes) ? `\uFEFF${formatted}` : formatted);
        around.out(`${printable(name)} formatted\n`);
      }
    } catch (error) {
      refuse(`${name} ${error instanceof NotText ? error.message : whyUnreadable(error)}`);
    }
  }
  if (inputs.files.length > 0) around.out(`${summary(inputs.files.length, changed, isCheck)}\n`);
  if (isUnusable) return exitCodes.unusable;
  return left > 0 || (isCheck && changed > 0) ? exitCodes.found : exitCodes.clean;
}

function summary(files: number, changed: number, isCheck: boolean): string {
  const all = `${files} file${files === 1 ? "" : "s"}`;
  if (changed === 0) return `${all}, nothing to format`;
  return isCheck
    ? `${changed} of ${all} not formatted: run sunwright format on them`
    : `${changed} of ${all} formatted`;
}

/** The byte order mark of UTF-8. */
function hasMark(bytes: Uint8Array): boolean {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}
