import { assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

/** A design in one file, assessed. */
export function assessText(text: string): Assessment {
  const file = new SourceFile("file:///site.sun", parser);
  file.update(text);
  return assess([file]);
}
