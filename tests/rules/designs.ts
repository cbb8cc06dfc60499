import { AssessmentMemory, assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { fixEdit } from "../../language-server/src/editor/edits/fix-edit.js";
import { WorkspaceView } from "../../language-server/src/editor/workspace-view.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { examplePreamble, exampleText } from "../../language-server/src/rules/example-parts.js";
import type { Fix } from "../../language-server/src/rules/rule.js";

const parser = createChunkParser();
const uri = "memory:///design.sun";

/** A design that stands in one text, and what was computed about it. */
export interface TextDesign {
  readonly text: string;
  readonly assessment: Assessment;
  readonly view: WorkspaceView;
}

export function designOf(text: string): TextDesign {
  const file = new SourceFile(uri, parser);
  file.update(text);
  const view = new WorkspaceView({
    uris: () => [uri],
    text: () => text,
    fragments: () => file.fragments,
    reach: () => [uri],
    usedBy: () => [],
  });
  return { text, view, assessment: view.assessment(uri) };
}

export function assessText(text: string): Assessment {
  return designOf(text).assessment;
}

/** Assesses texts that are like the one before, as an editor does: only what has changed is read and computed again. */
export function assessedInTurn(): (text: string) => Assessment {
  const file = new SourceFile(uri, parser);
  const memory = new AssessmentMemory();
  return (text) => {
    file.update(text);
    return assess([file], memory);
  };
}

/** A fixture with what it takes for granted. The shared parts that it does not name are left out: nothing depends on them. */
export function fixtureText(own: string): string {
  const unused = [...examplePreamble.matchAll(/^part (\w+) [\s\S]*?^}\n/gm)].filter(
    ([, name = ""]) => !new RegExp(`\\b${name}\\b`).test(own),
  );
  return unused.reduce((rest, [part]) => rest.replace(part, ""), exampleText(own));
}

/** The text after a fix; undefined where the editor finds nothing to change. */
export function textAfter({ text, view }: TextDesign, fix: Fix): string | undefined {
  const changes = fixEdit(view, fix);
  return changes && applied(text, changes);
}

/** Lines of a text that another one does not have, without the comments of a fixture. */
export function changedLines(before: string, after: string): string[] {
  const known = new Set(before.split("\n"));
  return after
    .split("\n")
    .filter((line) => !known.has(line))
    .map((line) => line.replace(/\/\/.*/, "").trim())
    .filter((line) => line !== "");
}

/** What is wrong with the text itself, other than parts that a short design does not use. */
export function textProblems({ problems }: Assessment): string[] {
  return problems.filter(({ severity }) => severity === "error").map(({ id, message }) => `${id}: ${message}`);
}
