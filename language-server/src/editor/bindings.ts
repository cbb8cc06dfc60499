import type { Assessment } from "../assessment/assessment.js";
import type { Mention } from "../design/model.js";
import type { Place } from "../place.js";
import type { Sources } from "./sources.js";
import { type NamedDeclaration, type Things, thingsOf } from "./things-of.js";
import { type Owner, type Role, type WordInText, wordsOf } from "./words.js";

/** One word of the text that is the name of something: where it is declared, or one segment of a mention. */
export interface Occurrence {
  readonly place: Place;
  readonly declares: boolean;
  /** Whether the name stands without a path before it. */
  readonly bare: boolean;
}

/** Every name of a design with what it stands for. */
export type Bindings = ReadonlyMap<NamedDeclaration, readonly Occurrence[]>;

const known = new WeakMap<Assessment, Bindings>();

/** Resolves every name of a design's files; computed once an assessment, when somebody first asks. */
export function bindingsOf(assessment: Assessment, sources: Sources): Bindings {
  let bindings = known.get(assessment);
  if (!bindings) {
    bindings = resolveAll(assessment, sources);
    known.set(assessment, bindings);
  }
  return bindings;
}

function resolveAll(assessment: Assessment, sources: Sources): Bindings {
  const bindings = new Map<NamedDeclaration, Occurrence[]>();
  const add = (declaration: NamedDeclaration, occurrence: Occurrence): void => {
    const list = bindings.get(declaration);
    if (list) list.push(occurrence);
    else bindings.set(declaration, [occurrence]);
  };
  const things = thingsOf(assessment.design);
  for (const uri of sources.reach(assessment.design.entry)) {
    for (const fragment of sources.fragments(uri)) {
      for (const declaration of fragment.declarations) {
        for (const { word, place, owners } of wordsOf(declaration)) {
          if (word.is === "name")
            add(things.root(word.declaration), { place, declares: true, bare: owners.length === 1 });
          if (word.is !== "mention") continue;
          for (const [index, segment] of word.mention.places.entries()) {
            const named = declarationOfSegment(assessment, word.mention, index, word.role, owners);
            if (named) add(named, { place: segment, declares: false, bare: index === 0 });
          }
        }
      }
    }
  }
  return bindings;
}

/** The declaration that a word names or makes; undefined for words that are no names, and for unknown names. */
export function declarationOf(
  assessment: Assessment,
  { word, owners }: Pick<WordInText, "word" | "owners">,
  segment: number,
): NamedDeclaration | undefined {
  if (word.is === "name") return thingsOf(assessment.design).root(word.declaration);
  if (word.is === "mention") return declarationOfSegment(assessment, word.mention, segment, word.role, owners);
  return undefined;
}

function declarationOfSegment(
  assessment: Assessment,
  mention: Mention,
  segment: number,
  role: Role,
  owners: readonly Owner[],
): NamedDeclaration | undefined {
  const { design } = assessment;
  const things = thingsOf(design);
  const first = mention.path[0] ?? "";
  const part = design.parts.get(first);
  if (role === "part" || role === "cable") return segment === 0 && part ? things.root(part.declaration) : undefined;
  if (role === "value") return nestedOfOwner(things, owners, first);
  if ((role === "target" || role === "named") && mention.path.length === 1) {
    const run = things.runs.get(first);
    if (run) return things.root(run.declaration);
  }
  const resolved = design.names.resolve({ path: mention.path.slice(0, segment + 1) });
  if (resolved.is === "item") return resolved.terminal === "" ? things.root(resolved.item.declaration) : undefined;
  if (role === "target" && mention.path.length === 1 && part) return things.root(part.declaration);
  return undefined;
}

/** Something nested in the thing that a property belongs to: the pole arrangement of an isolator's part. */
function nestedOfOwner(things: Things, owners: readonly Owner[], name: string): NamedDeclaration | undefined {
  const owner = owners[owners.length - 1]?.declaration;
  if (owner?.declares === "part") return owner.nested.find((nested) => nested.name === name);
  if (owner?.declares !== "item") return undefined;
  for (const thing of things.of(owner)) {
    const child = thing.is === "item" ? thing.children.find((candidate) => candidate.name === name) : undefined;
    if (child) return things.root(child.declaration);
  }
  return undefined;
}
