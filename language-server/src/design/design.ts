import { declarationProblems } from "./check.js";
import { makeItem } from "./items.js";
import type {
  DepartureDeclaration,
  ExpectationDeclaration,
  Fragment,
  Mention,
  PartDeclaration,
  Problem,
  ReadingDeclaration,
  RunDeclaration,
} from "./model.js";
import { Names } from "./names.js";
import { endOfRun, mentionProblem, partOfMention } from "./resolve.js";
import { partRow } from "./schema/index.js";
import { runRow } from "./schema/wiring.js";
import { resolveServes } from "./serves.js";
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
 */
export function buildDesign(files: readonly SourceFile[]): Design {
  const entry = files[0]?.uri ?? "";
  const names = new Names();
  const problems: Problem[] = [];
  const items: Item[] = [];
  const runDeclarations: RunDeclaration[] = [];
  const readingDeclarations: ReadingDeclaration[] = [];
  const departures: DepartureDeclaration[] = [];
  const expectations: ExpectationDeclaration[] = [];
  const itemFragments: Fragment[] = [];
  const usedParts = new Set<Part>();
  let site: Item | undefined;

  const addPart = (declaration: PartDeclaration): void => {
    const earlier = names.parts.get(declaration.name);
    if (earlier) {
      problems.push(duplicate("part", declaration, earlier.declaration));
      return;
    }
    const { name, kind } = declaration;
    names.parts.set(name, { is: "part", name, kind, row: partRow(kind), declaration });
  };

  for (const { fragments } of files) {
    for (const fragment of fragments) {
      for (const problem of fragment.problems) problems.push(problem);
      for (const declaration of fragment.declarations) {
        for (const problem of declarationProblems(declaration)) problems.push(problem);
        if (declaration.declares === "part") addPart(declaration);
      }
      itemFragments.push(fragment);
    }
  }

  const partOf = (mention: Mention): Part | undefined => {
    const part = partOfMention(names, mention);
    if (part) usedParts.add(part);
    else problems.push(mentionProblem(mention, 0, names.parts.keys(), "part"));
    return part;
  };

  for (const fragment of itemFragments) {
    for (const declaration of fragment.declarations) {
      switch (declaration.declares) {
        case "item": {
          const earlier = names.top.get(declaration.name);
          if (earlier) {
            problems.push(duplicate("item", declaration, earlier.declaration));
            break;
          }
          const item = makeItem(declaration, partOf);
          items.push(item);
          names.addTop(item);
          addNested(names, item, problems);
          if (item.kind === "site") site ??= item;
          break;
        }
        case "run":
          runDeclarations.push(declaration);
          break;
        case "measured":
          readingDeclarations.push(declaration);
          break;
        case "departure":
          departures.push(declaration);
          break;
        case "expect":
          expectations.push(declaration);
          break;
      }
    }
  }
  for (const item of items) checkPartKinds(item, problems);

  const runs: Run[] = [];
  const runNames = new Map<string, Run>();
  for (const declaration of runDeclarations) {
    const earlier = runNames.get(declaration.name) ?? names.top.get(declaration.name);
    if (earlier) {
      problems.push(duplicate("run", declaration, earlier.declaration));
      continue;
    }
    const run: Run = {
      is: "run",
      id: declaration.name,
      kind: "run",
      row: runRow,
      declaration,
      cable: declaration.cable && partOf(declaration.cable),
      layers: [{ label: declaration.name, block: declaration }],
      from: declaration.from && endOfRun(names, declaration.from, "out", problems),
      to: declaration.to && endOfRun(names, declaration.to, "in", problems),
    };
    if (run.cable && run.cable.kind !== "cable" && declaration.cable)
      problems.push(wrongKind(declaration.cable, run.cable, "cable"));
    runNames.set(run.id, run);
    runs.push(run);
  }

  const serves = resolveServes(items, names, problems);
  const readings = readingDeclarations.map((declaration) => {
    const resolved = names.resolve(declaration.target);
    if (resolved.is === "item") return { declaration, item: resolved.item };
    if (!runNames.has(declaration.target.path.join(".")))
      problems.push(mentionProblem(declaration.target, 0, names.top.keys(), "item"));
    return { declaration };
  });

  for (const part of names.parts.values()) {
    if (part.declaration.place.chunk.uri !== entry || items.length === 0 || usedParts.has(part)) continue;
    if (nestedUse(names, part.name)) continue;
    problems.push({
      id: "unused-part",
      severity: "note",
      message: `Nothing here is a ${part.name}. A part that no item uses is only text: use it, move it to a parts file, or delete it.`,
      place: part.declaration.namePlace,
      unnecessary: true,
    });
  }

  return { entry, site, parts: names.parts, items, runs, serves, readings, departures, expectations, names, problems };
}

function addNested(names: Names, item: Item, problems: Problem[]): void {
  const seen = new Map<string, Item>();
  for (const child of item.children) {
    const earlier = seen.get(child.name);
    if (earlier && child.declaration.name !== child.declaration.kind)
      problems.push(duplicate("item", child.declaration, earlier.declaration));
    seen.set(child.name, child);
    names.addNested(child);
    addNested(names, child, problems);
  }
}

/** A part used by a part: the breaker inside a board's sheet. */
function nestedUse(names: Names, name: string): boolean {
  for (const part of names.parts.values())
    for (const nested of part.declaration.nested) if (nested.part?.path[0] === name) return true;
  return false;
}

function checkPartKinds(item: Item, problems: Problem[]): void {
  const wanted = item.kind === "string" ? "module" : item.kind;
  if (item.part && item.declaration.part && item.part.kind !== wanted)
    problems.push(wrongKind(item.declaration.part, item.part, wanted));
  for (const child of item.children) checkPartKinds(child, problems);
}

function wrongKind(mention: Mention, part: Part, wanted: string): Problem {
  return {
    id: "wrong-kind",
    severity: "error",
    message: `${part.name} is a part of kind ${part.kind}; here a ${wanted} is needed. Name a ${wanted} part.`,
    place: mention.place,
    related: [{ place: part.declaration.kindPlace, message: `${part.name} is declared as ${part.kind}` }],
  };
}

function duplicate(
  sort: string,
  declaration: { readonly name: string; readonly namePlace: Problem["place"] },
  earlier: { readonly namePlace: Problem["place"] },
): Problem {
  return {
    id: "duplicate-name",
    severity: "error",
    message: `The name ${declaration.name} is taken: an earlier declaration has it, and this ${sort} is left out. Give it another name.`,
    place: declaration.namePlace,
    related: [{ place: earlier.namePlace, message: `${declaration.name} is first declared here` }],
  };
}
