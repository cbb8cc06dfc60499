import type { Problem } from "../design/model.js";
import { absolute } from "../place.js";
import type { Change } from "./edits/change.js";
import type { WorkspaceView } from "./workspace-view.js";

/**
 * Corrections of a file's spelling that can have only one meaning: a comma for a decimal point, a unit in other
 * letters. Nothing electrical is ever chosen here: which module or cable mends a finding is for the designer to say.
 */
export function safeChanges(view: WorkspaceView, uri: string): Change[] {
  const changes: Change[] = [];
  for (const { problems } of view.sources.fragments(uri)) {
    for (const problem of problems) {
      const text = onlyMeaning(problem);
      if (text === undefined) continue;
      const change = { ...absolute(problem.place), text };
      if (!changes.some(({ start, end }) => change.start < end && start < change.end)) changes.push(change);
    }
  }
  return changes.sort((a, b) => a.start - b.start);
}

const isSafe: Readonly<Record<string, (suggested: string, problem: Problem) => boolean>> = {
  "decimal-comma": () => true,
  "unknown-unit": (suggested, { message }) => {
    const written = /^(\S+) is not a unit/.exec(message)?.[1];
    return written !== undefined && suggested.toLowerCase().endsWith(written.toLowerCase());
  },
};

function onlyMeaning(problem: Problem): string | undefined {
  const [suggestion, other] = problem.suggestions ?? [];
  if (!suggestion || other || !isSafe[problem.id]?.(suggestion.text, problem)) return undefined;
  return suggestion.text;
}
