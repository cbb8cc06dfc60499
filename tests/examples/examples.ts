import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { URI } from "vscode-uri";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { assessAll } from "../../language-server/src/cli/assess-all.js";
import { readFiles } from "../../language-server/src/cli/read.js";

export const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const folder = join(root, "examples");

/** Every design of the examples, as a path below `examples/` with slashes; data sheets are no designs. */
export const designs: readonly string[] = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .map((path) => path.split(sep).join("/"))
  .filter((path) => path.endsWith(".sun") && !path.split("/").includes("parts"))
  .sort();

export const trainingDesigns = designs.filter((path) => path.startsWith("training/"));
export const goodDesigns = designs.filter((path) => !path.startsWith("training/"));

export function textOf(path: string): string {
  return readFileSync(join(folder, path), "utf8");
}

const known = new Map<string, Assessment>();

/** Assesses a design as the command line does, each once; `text` stands in for what the file says. */
export function assessed(path: string, text?: string): Assessment {
  if (text !== undefined) return assessedAnew(path, text);
  const assessment = known.get(path) ?? assessedAnew(path);
  known.set(path, assessment);
  return assessment;
}

function assessedAnew(path: string, text?: string): Assessment {
  const { project, asked } = readFiles([join(folder, path)], root);
  const uri = URI.file(join(folder, path)).toString();
  if (text !== undefined) project.update(uri, text);
  const [checked] = assessAll(project, asked);
  if (!checked) throw new Error(`${relative(root, join(folder, path))} could not be read`);
  return checked.assessment;
}
