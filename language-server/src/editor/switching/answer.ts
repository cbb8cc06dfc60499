import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Mode } from "../../circuit/modes.js";
import { findTarget } from "../../design/find-thing.js";
import type { Item, Run } from "../../design/things.js";
import { isolationReport } from "../../isolation/isolation-report.js";
import { liveReport } from "../../isolation/live-report.js";
import type { WorkspaceView } from "../workspace-view.js";
import { isolationMarkdown } from "./isolation-markdown.js";
import { liveMarkdown } from "./live-markdown.js";

/** A page in Markdown, or why there is none. */
export type Answer = { readonly markdown: string } | { readonly refused: string };

/** What is live in the design that begins in a file, with some devices open. */
export function liveAnswer(view: WorkspaceView, entry: string, open: readonly string[], mode: Partial<Mode>): Answer {
  const assessment = view.assessment(entry);
  const devices: Item[] = [];
  for (const name of open) {
    const thing = thingCalled(assessment, name);
    if (typeof thing === "string") return { refused: thing };
    if (thing.is === "run") return { refused: l10n.t("{0} is a run and cannot be opened. Name a device.", name) };
    devices.push(thing);
  }
  return { markdown: liveMarkdown(assessment, liveReport(assessment, { ...mode, open: devices })) };
}

/** How to make an item or run of the design that begins in a file dead. */
export function isolationAnswer(view: WorkspaceView, entry: string, name: string): Answer {
  const assessment = view.assessment(entry);
  const thing = thingCalled(assessment, name);
  if (typeof thing === "string") return { refused: thing };
  return { markdown: isolationMarkdown(assessment, isolationReport(assessment, thing)) };
}

function thingCalled({ design }: Assessment, name: string): Item | Run | string {
  const target = findTarget(design, name.split("."));
  if (typeof target === "string") return target;
  const { thing } = target;
  return thing?.is === "item" || thing?.is === "run"
    ? thing
    : l10n.t("{0} is on a part's sheet. Name an item or a run.", name);
}
