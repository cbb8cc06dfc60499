import { isNameStart, nameEnd } from "@sunwright/grammar";
import type { Assessment } from "../assessment/assessment.js";
import type { Item } from "../design/things.js";
import { absolute } from "../place.js";
import { bindingsOf, type Occurrence } from "./bindings.js";
import { type NamedWord, nameAt, type Span } from "./navigate.js";
import { type NamedDeclaration, thingsOf } from "./things-of.js";
import type { WorkspaceView } from "./workspace-view.js";

/** Why a rename cannot be done, in a sentence for the person who asked. */
export interface Refusal {
  readonly refused: string;
}

/** The word that a rename at an offset would change, or why there is none. */
export function renameableAt(
  view: WorkspaceView,
  uri: string,
  offset: number,
): { readonly span: Span; readonly name: string } | Refusal {
  const named = nameAt(view, uri, offset);
  if (!named) return { refused: "Only the name of an item, a run or a part can be renamed; there is none here." };
  const refused = unnamed(named.declaration);
  if (refused) return refused;
  return { span: absolute(named.located.place), name: named.declaration.name };
}

/** Every word to be changed so that the name at an offset becomes another, in all files; or why it cannot. */
export function renameAt(
  view: WorkspaceView,
  uri: string,
  offset: number,
  newName: string,
): { readonly edits: readonly Span[] } | Refusal {
  const named = nameAt(view, uri, offset);
  if (!named) return { refused: "Only the name of an item, a run or a part can be renamed; there is none here." };
  const { declaration, occurrences } = named;
  if (newName === declaration.name) return { edits: [] };
  const refused =
    unnamed(declaration) ??
    invalid(newName) ??
    taken(view, named, newName) ??
    unreadable(view, declaration) ??
    shadowed(view, declaration, occurrences, newName);
  return refused ?? { edits: occurrences.map(({ place }) => absolute(place)) };
}

/** `earthing { … }` and `site "…"` have a title or none; their kind word is no name. */
function unnamed(declaration: NamedDeclaration): Refusal | undefined {
  if (declaration.declares !== "item" || declaration.namePlace.from !== declaration.kindPlace.from) return undefined;
  return { refused: `A ${declaration.kind} has no name to change: ${declaration.kind} is the word for what it is.` };
}

function invalid(name: string): Refusal | undefined {
  if (name !== "" && isNameStart(name.charCodeAt(0)) && nameEnd(name, 0) === name.length) return undefined;
  const shown = name.trim() === "" ? "An empty text" : `"${name}"`;
  return {
    refused: `${shown} is no name: a name is letters, digits, _ and inner hyphens, and begins with a letter or _.`,
  };
}

function taken(view: WorkspaceView, { declaration }: NamedWord, name: string): Refusal | undefined {
  for (const assessment of view.assessments(declaration.namePlace.chunk.uri)) {
    const holder = holderOf(assessment, declaration, name);
    if (holder) return { refused: `The name ${name} is taken by ${holder}. Choose another.` };
  }
  return undefined;
}

function holderOf(assessment: Assessment, declaration: NamedDeclaration, name: string): string | undefined {
  const { design } = assessment;
  if (declaration.declares === "part") {
    const part = design.parts.get(name);
    return part && `the part ${name} (${part.kind})`;
  }
  const things = thingsOf(design);
  const top = design.names.top.get(name);
  if (top) return `the ${top.kind} ${name}`;
  if (things.runs.has(name)) return `the run ${name}`;
  for (const thing of things.of(declaration)) {
    const parent = thing.is === "item" ? thing.parent : undefined;
    if (!parent) continue;
    const sibling = parent.children.find((child) => child.name === name);
    if (sibling) return `the ${sibling.kind} ${sibling.id}`;
    if (parent.row?.terminals.includes(name)) return `a terminal of ${parent.id}`;
  }
  return undefined;
}

/** Words of a piece of text that cannot be read are not known; one of them may be the name. */
function unreadable(view: WorkspaceView, declaration: NamedDeclaration): Refusal | undefined {
  const word = new RegExp(`(?<![\\p{L}\\p{N}_-])${declaration.name}(?![\\p{L}\\p{N}_-])`, "u");
  for (const uri of view.concerned([declaration.namePlace.chunk.uri])) {
    const text = view.sources.text(uri) ?? "";
    const fragments = view.sources.fragments(uri);
    for (const [index, { broken, chunk }] of fragments.entries()) {
      const end = fragments[index + 1]?.chunk.start ?? text.length;
      if (broken && word.test(text.slice(chunk.start, end)))
        return {
          refused: `A line that mentions ${declaration.name} cannot be read yet, so its name would be left behind. Mend what is marked there first.`,
        };
    }
  }
  return undefined;
}

/** A name that stands without a path must not come to mean something nested elsewhere, or the other way round. */
function shadowed(
  view: WorkspaceView,
  declaration: NamedDeclaration,
  occurrences: readonly Occurrence[],
  name: string,
): Refusal | undefined {
  if (declaration.declares === "part") return undefined;
  // A bare name finds a top-level item first, so only the bare name of something nested can be mistaken.
  const isNested = occurrences.some(({ bare, declares }) => declares && !bare);
  const isBare = isNested && occurrences.some(({ bare, declares }) => bare && !declares);
  for (const assessment of view.assessments(declaration.namePlace.chunk.uri)) {
    const bindings = bindingsOf(assessment, view.sources);
    for (const other of nestedCalled(assessment.design.items, name)) {
      const otherDeclaration = thingsOf(assessment.design).root(other.declaration);
      const otherIsBare = bindings.get(otherDeclaration)?.some(({ bare, declares }) => bare && !declares) ?? false;
      if (isBare || otherIsBare)
        return { refused: `${other.id} has that name, and a line that only says ${name} could then mean either.` };
    }
  }
  return undefined;
}

function* nestedCalled(items: readonly Item[], name: string): Generator<Item> {
  for (const item of items) {
    for (const child of item.children) if (child.name === name) yield child;
    yield* nestedCalled(item.children, name);
  }
}
