import { assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();

/** Assesses a design that stands in one text. */
export function assessText(text: string, uri = "memory:///design.sun"): Assessment {
  const file = new SourceFile(uri, parser);
  file.update(text);
  return assess([file]);
}

/** What is wrong with the text itself, other than parts that a short design does not use. */
export function textProblems({ problems }: Assessment): string[] {
  return problems.filter(({ severity }) => severity === "error").map(({ id, message }) => `${id}: ${message}`);
}
