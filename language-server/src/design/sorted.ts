import { declarationProblems } from "./check.js";
import type { MadeItem, MadeRun } from "./made.js";
import type {
  Declaration,
  DepartureDeclaration,
  ExpectationDeclaration,
  Fragment,
  ItemDeclaration,
  PartDeclaration,
  Problem,
  ReadingDeclaration,
  RunDeclaration,
} from "./model.js";

/** The declarations of one fragment by sort, with all that is wrong with them by themselves. */
export interface Sorted {
  readonly parts: readonly PartDeclaration[];
  readonly items: readonly ItemDeclaration[];
  readonly runs: readonly RunDeclaration[];
  readonly readings: readonly ReadingDeclaration[];
  readonly departures: readonly DepartureDeclaration[];
  readonly expectations: readonly ExpectationDeclaration[];
  readonly problems: readonly Problem[];
  /** Things as they were made by the last build, at the index of their declaration. */
  readonly madeItems: (MadeItem | undefined)[];
  readonly madeRuns: (MadeRun | undefined)[];
}

const memory = new WeakMap<Fragment, Sorted>();

/** Sorted once a fragment, and a fragment stays the same object while its text does. */
export function sorted(fragment: Fragment): Sorted {
  let found = memory.get(fragment);
  if (!found) {
    found = sort(fragment);
    memory.set(fragment, found);
  }
  return found;
}

function sort({ declarations, problems }: Fragment): Sorted {
  const of = <Sort extends Declaration["declares"]>(sort: Sort): Extract<Declaration, { declares: Sort }>[] =>
    declarations.filter(
      (declaration): declaration is Extract<Declaration, { declares: Sort }> => declaration.declares === sort,
    );
  return {
    parts: of("part"),
    items: of("item"),
    runs: of("run"),
    readings: of("measured"),
    departures: of("departure"),
    expectations: of("expect"),
    problems: [...problems, ...declarations.flatMap(declarationProblems)],
    madeItems: [],
    madeRuns: [],
  };
}
