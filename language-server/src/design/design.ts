import { itemOf, partOf, runOf, sameTable } from "./made.js";
import { checkNamedValues } from "./mentions.js";
import type { DepartureDeclaration, ExpectationDeclaration, Fragment, Problem, ReadingDeclaration } from "./model.js";
import { Names } from "./names.js";
import { duplicateName, unusedPart } from "./naming-problems.js";
import { mentionProblem } from "./resolve.js";
import { resolveServes } from "./serves.js";
import { type Sorted, sorted } from "./sorted.js";
import type { Item, Part, Run } from "./things.js";

/** One file's fragments, as the project hands them over. */
export interface SourceFile {
  readonly uri: string;
  readonly fragments: readonly Fragment[];
}

/** An installation as written: a file with everything it uses. */
export interface Design {
  /** The file that was asked about; the others are those it uses. */
  readonly entry: string;
  readonly site?: Item;
  readonly parts: ReadonlyMap<string, Part>;
  /** Top-level items in the order of the text; what is nested is under `children`. */
  readonly items: readonly Item[];
  readonly runs: readonly Run[];
  /** The item that a way serves, where it names one. */
  readonly serves: ReadonlyMap<Item, Item>;
  readonly readings: readonly { readonly declaration: ReadingDeclaration; readonly item?: Item }[];
  readonly departures: readonly DepartureDeclaration[];
  readonly expectations: readonly ExpectationDeclaration[];
  readonly names: Names;
  /** Everything wrong with the text and its names, in all files of the design. */
  readonly problems: readonly Problem[];
}

/**
 * Puts the fragments of a file and of the files it uses together. `files[0]` is the file asked about.
 * Never fails: what cannot be resolved is a problem, and the thing it belonged to stays without it.
 * Things whose declarations and names are unchanged are the same objects as in the build before.
 */
export function buildDesign(files: readonly SourceFile[]): Design {
  const entry = files[0]?.uri ?? "";
  const names = new Names();
  const problems: Problem[] = [];
  const fragments: Sorted[] = [];
  for (const file of files) for (const fragment of file.fragments) fragments.push(sorted(fragment));

  for (const fragment of fragments) {
    for (const problem of fragment.problems) problems.push(problem);
    for (const declaration of fragment.parts) {
      const earlier = names.parts.get(declaration.name);
      if (earlier) problems.push(duplicateName("part", declaration, earlier.declaration));
      else names.parts.set(declaration.name, partOf(declaration));
    }
  }
  names.partsTable = sameTable([...names.parts.values()]);
  const usedParts = new Set<Part>();
  const items = buildItems(fragments, names, usedParts, problems);
  const runs = buildRuns(fragments, names, usedParts, problems);
  const serves = resolveServes(items, names, problems);
  checkNamedValues(items, names, runs, problems);
  const readings = fragments.flatMap((fragment) => fragment.readings);

  if (items.length > 0)
    for (const part of names.parts.values())
      if (part.declaration.place.chunk.uri === entry && !usedParts.has(part) && !usedByPart(names, part.name))
        problems.push(unusedPart(part));

  return {
    entry,
    site: items.find(({ kind }) => kind === "site"),
    parts: names.parts,
    items,
    runs: [...runs.values()],
    serves,
    readings: readings.map((declaration) => readingOf(declaration, names, runs, problems)),
    departures: fragments.flatMap((fragment) => fragment.departures),
    expectations: fragments.flatMap((fragment) => fragment.expectations),
    names,
    problems,
  };
}

function buildItems(fragments: readonly Sorted[], names: Names, usedParts: Set<Part>, problems: Problem[]): Item[] {
  const items: Item[] = [];
  for (const fragment of fragments) {
    for (const [index, declaration] of fragment.items.entries()) {
      const earlier = names.top.get(declaration.name);
      if (earlier) {
        problems.push(duplicateName("item", declaration, earlier.declaration));
        continue;
      }
      const made = itemOf(declaration, names, fragment.madeItems[index]);
      fragment.madeItems[index] = made;
      const { item, uses, problems: own } = made;
      for (const { mention, part } of uses) {
        if (part) usedParts.add(part);
        else problems.push(mentionProblem(mention, 0, names.parts.keys(), "part"));
      }
      for (const problem of own) problems.push(problem);
      items.push(item);
      names.addTop(item);
    }
  }
  return items;
}

function buildRuns(
  fragments: readonly Sorted[],
  names: Names,
  usedParts: Set<Part>,
  problems: Problem[],
): Map<string, Run> {
  const runs = new Map<string, Run>();
  for (const fragment of fragments) {
    for (const [index, declaration] of fragment.runs.entries()) {
      const earlier = runs.get(declaration.name) ?? names.top.get(declaration.name);
      if (earlier) {
        problems.push(duplicateName("run", declaration, earlier.declaration));
        continue;
      }
      const made = runOf(declaration, names, problems, fragment.madeRuns[index]);
      fragment.madeRuns[index] = made;
      const { run } = made;
      if (run.cable) usedParts.add(run.cable);
      runs.set(declaration.name, run);
    }
  }
  return runs;
}

function readingOf(
  declaration: ReadingDeclaration,
  names: Names,
  runs: ReadonlyMap<string, Run>,
  problems: Problem[],
): Design["readings"][number] {
  const resolved = names.resolve(declaration.target);
  if (resolved.is === "item") return { declaration, item: resolved.item };
  if (!runs.has(declaration.target.path.join(".")))
    problems.push(mentionProblem(declaration.target, 0, names.top.keys(), "item"));
  return { declaration };
}

/** A part used by a part: the breaker inside a board's sheet. */
function usedByPart(names: Names, name: string): boolean {
  for (const part of names.parts.values())
    for (const nested of part.declaration.nested) if (nested.part?.path[0] === name) return true;
  return false;
}
