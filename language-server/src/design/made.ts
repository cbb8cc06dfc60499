import { makeItem } from "./items.js";
import type { ItemDeclaration, Mention, PartDeclaration, Problem, RunDeclaration } from "./model.js";
import type { Names } from "./names.js";
import { innerDuplicates, wrongKind, wrongPartKinds } from "./naming-problems.js";
import { endOfRun, mentionProblem } from "./resolve.js";
import { partRow } from "./schema/index.js";
import { runRow } from "./schema/wiring.js";
import type { End, Item, Part, Run } from "./things.js";

/*
 * Things are made once and stay the same objects from one build to the next, for as long as their declaration and all
 * that it names stay the same. An edit then makes a handful of things anew, and whoever compares by identity sees
 * which ones.
 */

const parts = new WeakMap<PartDeclaration, Part>();

export function partOf(declaration: PartDeclaration): Part {
  let part = parts.get(declaration);
  if (!part) {
    const { name, kind } = declaration;
    part = { is: "part", name, kind, row: partRow(kind), declaration };
    parts.set(declaration, part);
  }
  return part;
}

/** Tables of parts seen lately, each site's own: two designs that are edited in turn both find theirs. */
const tables: (readonly Part[])[] = [];
const tablesKept = 8;

/** The same array as before for the same parts, so that one comparison says whether anything about parts changed. */
export function sameTable(now: readonly Part[]): readonly Part[] {
  const found = tables.find(
    (table) => table.length === now.length && table.every((part, index) => part === now[index]),
  );
  if (found) return found;
  tables.unshift(now);
  tables.length = Math.min(tables.length, tablesKept);
  return now;
}

/** An item as it was made, kept beside its declaration. */
export interface MadeItem {
  readonly item: Item;
  /** Every part that was looked up for it, and what was found. */
  readonly uses: readonly { readonly mention: Mention; readonly part: Part | undefined }[];
  /** What is wrong with it whatever else the design holds: names used twice inside it, parts of the wrong kind. */
  readonly problems: readonly Problem[];
  /** The table of parts that it was made with: with the same table there is nothing to look up again. */
  readonly table: readonly Part[];
}

/** The item of a declaration, and the parts it and what is nested in it name; `known` is how it was made before. */
export function itemOf(declaration: ItemDeclaration, names: Names, known: MadeItem | undefined): MadeItem {
  if (known && (known.table === names.partsTable || sameParts(known, names))) return known;
  const uses: { mention: Mention; part: Part | undefined }[] = [];
  const item = makeItem(declaration, (mention) => {
    const part = names.part(mention);
    uses.push({ mention, part });
    return part;
  });
  const problems = [...innerDuplicates(item), ...wrongPartKinds(item)];
  return { item, uses, problems, table: names.partsTable };
}

function sameParts({ uses }: MadeItem, names: Names): boolean {
  for (const { mention, part } of uses) if (names.part(mention) !== part) return false;
  return true;
}

/** A run as it was made, kept beside its declaration. */
export interface MadeRun {
  readonly run: Run;
  /** The top-level items that its ends begin with; undefined where one does not, and has to be looked up again. */
  readonly from: Item | undefined;
  readonly to: Item | undefined;
}

/**
 * The run of a declaration between the terminals its ends name. An item that is the same object has the same inside,
 * so an end that begins with it ends where it ended before.
 */
export function runOf(
  declaration: RunDeclaration,
  names: Names,
  problems: Problem[],
  known: MadeRun | undefined,
): MadeRun {
  if (known && sameEnds(declaration, known, names)) return known;
  const cable = declaration.cable && names.part(declaration.cable);
  if (declaration.cable && !cable) problems.push(mentionProblem(declaration.cable, 0, names.parts.keys(), "part"));
  if (declaration.cable && cable && cable.kind !== "cable") problems.push(wrongKind(declaration.cable, cable, "cable"));
  const run: Run = {
    is: "run",
    id: declaration.name,
    kind: "run",
    row: runRow,
    declaration,
    cable,
    layers: [{ label: declaration.name, block: declaration }],
    from: declaration.from && endOfRun(names, declaration.from, "out", problems),
    to: declaration.to && endOfRun(names, declaration.to, "in", problems),
  };
  const isSound = run.from && run.to && run.cable?.kind === "cable";
  return {
    run: known && sameRun(known.run, run) ? known.run : run,
    from: isSound ? names.top.get(declaration.from?.path[0] ?? "") : undefined,
    to: isSound ? names.top.get(declaration.to?.path[0] ?? "") : undefined,
  };
}

function sameEnds({ from, to, cable }: RunDeclaration, known: MadeRun, names: Names): boolean {
  if (!known.from || !known.to || !from || !to || !cable) return false;
  return (
    names.top.get(from.path[0] ?? "") === known.from &&
    names.top.get(to.path[0] ?? "") === known.to &&
    names.part(cable) === known.run.cable
  );
}

function sameRun(a: Run, b: Run): boolean {
  return a.cable === b.cable && sameEnd(a.from, b.from) && sameEnd(a.to, b.to);
}

function sameEnd(a: End | undefined, b: End | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && a.item === b.item && a.terminal === b.terminal);
}
