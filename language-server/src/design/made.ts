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

interface MadeItem {
  readonly item: Item;
  /** Every part that was looked up for it, and what was found. */
  readonly uses: readonly { readonly mention: Mention; readonly part: Part | undefined }[];
  /** What is wrong with it whatever else the design holds: names used twice inside it, parts of the wrong kind. */
  readonly problems: readonly Problem[];
}
const items = new WeakMap<ItemDeclaration, MadeItem>();

/** The item of a declaration, and the parts it and what is nested in it name. */
export function itemOf(declaration: ItemDeclaration, names: Names): MadeItem {
  const known = items.get(declaration);
  if (known && sameParts(known, names)) return known;
  const uses: { mention: Mention; part: Part | undefined }[] = [];
  const item = makeItem(declaration, (mention) => {
    const part = names.part(mention);
    uses.push({ mention, part });
    return part;
  });
  const made = { item, uses, problems: [...innerDuplicates(item), ...wrongPartKinds(item)] };
  items.set(declaration, made);
  return made;
}

function sameParts({ uses }: MadeItem, names: Names): boolean {
  for (const { mention, part } of uses) if (names.part(mention) !== part) return false;
  return true;
}

interface MadeRun {
  readonly run: Run;
  /** The top-level items that its ends begin with; undefined where one does not, and has to be looked up again. */
  readonly from: Item | undefined;
  readonly to: Item | undefined;
}
const runs = new WeakMap<RunDeclaration, MadeRun>();

/**
 * The run of a declaration between the terminals its ends name. An item that is the same object has the same inside,
 * so an end that begins with it ends where it ended before.
 */
export function runOf(declaration: RunDeclaration, names: Names, problems: Problem[]): Run {
  const known = runs.get(declaration);
  if (known && sameEnds(declaration, known, names)) return known.run;
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
  if (known && sameRun(known.run, run)) return known.run;
  runs.set(declaration, {
    run,
    from: isSound ? names.top.get(declaration.from?.path[0] ?? "") : undefined,
    to: isSound ? names.top.get(declaration.to?.path[0] ?? "") : undefined,
  });
  return run;
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
