import * as l10n from "@vscode/l10n";
import type { Declaration } from "../../design/model.js";
import { baseName, pathBetween, resolveUse } from "../../language/files.js";
import type { Change } from "../edits/change.js";
import { lineEnding } from "../edits/layout.js";
import type { WorkspaceView } from "../workspace-view.js";
import type { Asked, Refactoring } from "./refactoring.js";
import { linesBehind, linesOf, removal, stretchOf } from "./stretch.js";

type Moved = Extract<Declaration, { readonly declares: "part" | "item" | "run" }>;

/** So many files are enough to choose from. */
const most = 6;

/** A declaration goes to another file, with the comments that belong to it; what used it still finds it. */
export function moveItem(asked: Asked, canCreate: boolean): Refactoring[] {
  const { declaration } = asked;
  if (declaration.declares !== "part" && declaration.declares !== "item" && declaration.declares !== "run") return [];
  // A site says where a design begins; what has no name cannot be told from its like in another file.
  if (declaration.declares === "item" && declaration.namePlace.from === declaration.kindPlace.from) return [];
  const existing = goals(asked, declaration).map((goal) => toFile(asked, declaration, goal));
  return canCreate ? [...existing, toNewFile(asked, declaration)] : existing;
}

/** Files that the declaration can go to, those that are used here already first. */
function goals({ view, uri }: Asked, moved: Moved): string[] {
  const { sources } = view;
  const used = sources.reach(uri).slice(1);
  const found = used.filter((goal) => canTake(view, uri, moved, goal));
  const folder = uri.slice(0, uri.lastIndexOf("/") + 1);
  for (const goal of sources.uris()) {
    if (found.length >= most) break;
    if (goal === uri || used.includes(goal) || !goal.startsWith(folder)) continue;
    if (canBeUsed(view, uri, goal) && canTake(view, uri, moved, goal)) found.push(goal);
  }
  return found.slice(0, most);
}

/** Whether a file can be used from now on and brings nothing to the design but data sheets; and no circle. */
function canBeUsed(view: WorkspaceView, uri: string, goal: string): boolean {
  const brought = view.sources.reach(goal);
  return !brought.includes(uri) && brought.every((file) => declarationsIn(view, file).every(isOfSheets));
}

/** Whether no design comes to have something that it had not. */
function canTake(view: WorkspaceView, uri: string, moved: Moved, goal: string): boolean {
  const { sources } = view;
  const fragments = sources.fragments(goal);
  if (sources.text(goal) === undefined || fragments.some(({ broken }) => broken)) return false;
  return view.entries(goal).every((entry) => {
    const files = sources.reach(entry);
    if (files.includes(uri)) return true;
    // A sheet that nothing uses yet is no design of its own once this file uses it.
    if (entry !== goal && moved.declares !== "part") return false;
    return files.every((file) =>
      declarationsIn(view, file).every((one) => !("name" in one) || one.name !== moved.name),
    );
  });
}

function isOfSheets({ declares }: Declaration): boolean {
  return declares === "use" || declares === "part";
}

function declarationsIn(view: WorkspaceView, uri: string): Declaration[] {
  return view.sources.fragments(uri).flatMap(({ declarations }) => declarations);
}

function toFile(asked: Asked, moved: Moved, goal: string): Refactoring {
  const { view, uri, text } = asked;
  const there = view.sources.text(goal) ?? "";
  const ending = lineEnding(there);
  const lines = linesOf(text, stretchOf(text, moved.place), ending);
  const gap = there.trim() === "" ? "" : /[\r\n]$/.test(there) ? ending : `${ending}${ending}`;
  const isUsed = view.sources.reach(uri).includes(goal);
  return {
    title: l10n.t("Move {0} to {1}", moved.name, shown(uri, goal)),
    kind: "refactor.move",
    changes: [
      removal(text, uri, stretchOf(text, moved.place)),
      { uri: goal, start: there.length, end: there.length, text: `${gap}${lines}` },
      ...(isUsed ? [] : [useLine(asked, goal)]),
    ],
  };
}

function toNewFile(asked: Asked, moved: Moved): Refactoring {
  const { view, uri, text } = asked;
  const goal = freeFile(view, uri, moved.name.toLowerCase());
  return {
    title: l10n.t("Move {0} to a new file {1}", moved.name, shown(uri, goal)),
    kind: "refactor.move",
    creates: { uri: goal, text: linesOf(text, stretchOf(text, moved.place), lineEnding(text)) },
    changes: [removal(text, uri, stretchOf(text, moved.place)), useLine(asked, goal)],
  };
}

/** A file beside this one that is not there yet, as far as is known: making it fails where it is. */
function freeFile(view: WorkspaceView, uri: string, name: string): string {
  const known = new Set(view.sources.uris());
  for (let number = 1; ; number++) {
    const goal = resolveUse(uri, `${number === 1 ? name : `${name}-${number}`}.sun`);
    if (!known.has(goal)) return goal;
  }
}

/** A `use` line behind the others; before everything else where there is none. */
function useLine({ view, uri, text }: Asked, goal: string): Change {
  const line = `use "${pathBetween(uri, goal)}"`;
  const ending = lineEnding(text);
  const last = declarationsIn(view, uri).findLast((one) => one.declares === "use");
  if (last) return linesBehind(text, last.place, line);
  const start = text.startsWith("\uFEFF") ? 1 : 0;
  return { uri, start, end: start, text: `${line}${ending}${ending}` };
}

function shown(uri: string, goal: string): string {
  const path = pathBetween(uri, goal);
  return path === "" ? baseName(goal) : path;
}
