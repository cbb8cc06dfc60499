import { resolveUse } from "../language/files.js";
import { absolute, type Place } from "../place.js";
import { bindingsOf, declarationOf, type Occurrence } from "./bindings.js";
import { type Located, locate } from "./locate.js";
import { pageOf } from "./pages.js";
import type { NamedDeclaration } from "./things-of.js";
import type { WorkspaceView } from "./workspace-view.js";

/** A stretch of a file, in offsets. */
export interface Span {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
}

/** A name in the text with everything that carries it. */
export interface NamedWord {
  readonly located: Located;
  readonly declaration: NamedDeclaration;
  /** In every design that the declaring file belongs to; each word once, only where the text still stands. */
  readonly occurrences: readonly Occurrence[];
}

export type Definition =
  | { readonly goes: "to-text"; readonly from: Span; readonly to: Span; readonly whole: Span }
  | { readonly goes: "to-file"; readonly from: Span; readonly uri: string };

/** The name at an offset; undefined where no name stands, or one that nothing declares. */
export function nameAt(view: WorkspaceView, uri: string, offset: number): NamedWord | undefined {
  const located = locate(view.sources.fragments(uri), offset);
  if (!located) return undefined;
  for (const assessment of view.assessments(uri)) {
    const declaration = declarationOf(assessment, located, located.segment);
    if (declaration) return { located, declaration, occurrences: occurrencesOf(view, declaration) };
  }
  return undefined;
}

/** Everywhere a declaration's name is written. */
function occurrencesOf(view: WorkspaceView, declaration: NamedDeclaration): Occurrence[] {
  const found = new Map<string, Occurrence>();
  for (const assessment of view.assessments(declaration.namePlace.chunk.uri)) {
    for (const occurrence of bindingsOf(assessment, view.sources).get(declaration) ?? []) {
      if (!view.isLive(occurrence.place)) continue;
      const { uri, start } = absolute(occurrence.place);
      const key = `${uri} ${start}`;
      if (!found.has(key)) found.set(key, occurrence);
    }
  }
  return [...found.values()];
}

/** Where the word at an offset is declared: a name, a used file, or the page of a rule below `docs`. */
export function definitionAt(
  view: WorkspaceView,
  uri: string,
  offset: number,
  docs: string | undefined,
): Definition | undefined {
  const located = locate(view.sources.fragments(uri), offset);
  if (!located) return undefined;
  const from = absolute(located.place);
  const { word } = located;
  if (word.is === "use") {
    const used = usedFile(view, uri, word.declaration.path);
    return used === undefined ? undefined : { goes: "to-file", from, uri: used };
  }
  if (word.is === "rule") {
    const page = pageOf(word.rule, docs);
    return page === undefined ? undefined : { goes: "to-file", from, uri: page };
  }
  const named = nameAt(view, uri, offset);
  if (!named || !view.isLive(named.declaration.namePlace)) return undefined;
  const { namePlace, place } = named.declaration;
  return { goes: "to-text", from, to: absolute(namePlace), whole: absolute(place) };
}

/** Every mention of the name at an offset, with its declaration or without. */
export function referencesAt(view: WorkspaceView, uri: string, offset: number, withDeclaration: boolean): Span[] {
  const named = nameAt(view, uri, offset);
  if (!named) return [];
  return named.occurrences.filter(({ declares }) => withDeclaration || !declares).map(({ place }) => absolute(place));
}

/** The same name elsewhere in the same file. */
export function highlightsAt(
  view: WorkspaceView,
  uri: string,
  offset: number,
): { readonly span: Span; readonly declares: boolean }[] {
  const named = nameAt(view, uri, offset);
  if (!named) return [];
  return named.occurrences
    .filter(({ place }: { readonly place: Place }) => place.chunk.uri === uri)
    .map(({ place, declares }) => ({ span: absolute(place), declares }));
}

/** The known file that a `use` line of another file means. */
export function usedFile(view: WorkspaceView, from: string, path: string): string | undefined {
  const target = resolveUse(from, path);
  return view.sources.text(target) === undefined ? undefined : target;
}
