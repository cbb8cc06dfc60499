import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Item } from "../design/things.js";
import type { DirectedCurrent, Direction } from "../physics/ac-current.js";
import type { Figure } from "../physics/figure.js";
import { busiestLine, type LineLoad, lineCurrents } from "../physics/phase-currents.js";
import { lineOf, linesOf } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import type { NotChecked } from "./rule.js";

/** What units put through a conductor, one way and the other. */
export interface UnitCurrents {
  /** Each direction at most once, per line conductor of the one that carries most. */
  readonly currents: readonly DirectedCurrent[];
  /** What is not known of the others. */
  readonly unknown: readonly NotChecked[];
}

type Fact = readonly [Item, string];

/** All that units together may send and draw through one conductor. */
export function unitCurrents(units: readonly Terminal[], tree: FeedTree, judge: Judge): UnitCurrents {
  const missing = new MissingFacts();
  const currents: DirectedCurrent[] = [];
  const add = (direction: Direction, some: readonly Terminal[], fact: (unit: Terminal) => Fact): void => {
    const current = missing.orElse(() => together(some, tree, judge, fact));
    if (current) currents.push({ direction, current });
  };
  add("export", units, exported);
  const drawing = units.filter(mayDraw);
  const isStated = (unit: Terminal): boolean => judge.knows(...drawn(unit));
  const passing = drawing.filter((unit) => !isStated(unit) && backupOf(unit));
  for (const unit of drawing) missing.orElse(() => judge.need(drawn(unit)));
  add("import", drawing.filter(isStated), drawn);
  // What an inverter passes on is part of what it draws: where only that is stated, it draws no less.
  add(
    "pass-through",
    passing.filter((unit) => judge.knows(...passedOn(unit))),
    passedOn,
  );
  return { currents, unknown: missing.outcomes() };
}

/** Current (A) that units send through one conductor when all of them run; undefined for no units. */
export function exportCurrent(units: readonly Terminal[], tree: FeedTree, judge: Judge): Figure | undefined {
  return together(units, tree, judge, exported);
}

const exported = ({ item }: Terminal): Fact => [item, "max-current"];
const drawn = ({ item }: Terminal): Fact => [item, "max-import-current"];
const passedOn = (unit: Terminal): Fact => [backupOf(unit) ?? unit.item, "pass-through-current"];

/** An inverter with a battery charges it from the grid, and one with a backup port passes the grid on. */
function mayDraw({ item }: Terminal): boolean {
  return item.parent?.children.some(({ kind }) => kind === "battery" || kind === "backup") === true;
}

function backupOf({ item }: Terminal): Item | undefined {
  return item.parent?.children.find(({ kind }) => kind === "backup");
}

/** Sum of one current of each unit, on the line conductor that carries most. */
function together(
  units: readonly Terminal[],
  tree: FeedTree,
  judge: Judge,
  fact: (unit: Terminal) => Fact,
): Figure | undefined {
  const currents: readonly Figure[] = judge.need(...units.map(fact));
  if (currents.length < 2) return currents[0];
  const supply = linesOf(tree.root.item, judge);
  const loads = units.map((unit, index) => lineLoad(unit, currents[index]!, supply, tree, judge));
  const lines = lineCurrents(loads, supply);
  return lines && busiestLine(lines).current;
}

/** On a single-phase supply every unit is on its one line, whatever the unit says of itself. */
function lineLoad(unit: Terminal, current: Figure, supply: 1 | 3, tree: FeedTree, judge: Judge): LineLoad {
  if (supply === 1) return { current, lines: 1 };
  const lines = linesOf(unit.item, judge);
  if (lines === 3) return { current, lines };
  return { current, lines, line: lineOf(tree, unit) ?? judge.unknown(unit.item, "phase") };
}
