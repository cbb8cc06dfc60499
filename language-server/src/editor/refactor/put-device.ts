import type { Run } from "../../design/things.js";
import type { CutRun } from "../../rules/rule.js";
import type { Change } from "../edits/change.js";
import { lineEnding } from "../edits/layout.js";
import type { WorkspaceView } from "../workspace-view.js";
import { cutRun } from "./cut-run.js";
import { deviceLine, type Make } from "./device-line.js";
import { FreshNames } from "./fresh-names.js";
import { linesBehind } from "./stretch.js";

/** The changes that put a device of its own into each of some runs. Undefined where one of them cannot be changed. */
export function putIntoRuns(view: WorkspaceView, cuts: readonly CutRun[], make: Make): Change[] | undefined {
  const changes: Change[] = [];
  let names: FreshNames | undefined;
  for (const { run, source } of cuts) {
    const text = textOf(view, run);
    if (text === undefined || !run.declaration.from || !run.declaration.to) return undefined;
    names ??= namesAround(view, run);
    const device = names.next(make.kind);
    const cut = { device, second: names.next("run"), backwards: source === "to" };
    changes.push(...cutRun(text, run, cut, deviceLine(device, make)));
  }
  return changes;
}

/**
 * The changes that tap a device off at a terminal, behind a run that ends there. How long its lead will be nobody has
 * said: the run states no length, and what depends on it is not checked.
 */
export function tapOff(view: WorkspaceView, run: Run, terminal: string, make: Make): Change[] | undefined {
  const text = textOf(view, run);
  if (text === undefined) return undefined;
  const names = namesAround(view, run);
  const device = names.next(make.kind);
  const ending = lineEnding(text);
  const lead = `run ${names.next("run")} from ${terminal} to ${device}  // tee, in parallel: state its length and cable`;
  return [linesBehind(text, run.declaration.place, `${deviceLine(device, make)}${ending}${lead}`)];
}

function textOf(view: WorkspaceView, { declaration }: Run): string | undefined {
  if (view.fragmentOf(declaration.place)?.broken !== false) return undefined;
  return view.sources.text(declaration.place.chunk.uri);
}

function namesAround(view: WorkspaceView, { declaration }: Run): FreshNames {
  return new FreshNames(view.assessments(declaration.place.chunk.uri).map(({ design }) => design));
}
