import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { type LineCount, lineCount } from "../physics/ac-current.js";
import type { Given } from "../physics/figure.js";
import type { LineName } from "../physics/phase-currents.js";
import type { Judge } from "./judge.js";
import { listed } from "./phrases.js";

/**
 * What feeds into the a.c. side beside the supply: grid ports of inverters, and generating units. Both are named by the
 * terminal at which they do; its item states the currents.
 */

const memory = new WeakMap<FeedTree, ReadonlyMap<Terminal, readonly Terminal[]>>();
const none: readonly Terminal[] = [];

/** Units that feed in through a terminal, seen from the root of a tree, in the order in which the tree reaches them. */
export function unitsThrough(tree: FeedTree, terminal: Terminal): readonly Terminal[] {
  let all = memory.get(tree);
  if (!all) {
    all = gather(tree);
    memory.set(tree, all);
  }
  return all.get(terminal) ?? none;
}

function gather(tree: FeedTree): Map<Terminal, Terminal[]> {
  const found = new Map<Terminal, Terminal[]>();
  for (const unit of tree.order) {
    if (unit === tree.root || !isUnit(unit)) continue;
    for (let at: Terminal | undefined = unit; at; at = tree.arriving.get(at)?.from) {
      const own = found.get(at);
      if (own) own.push(unit);
      else found.set(at, [unit]);
    }
  }
  return found;
}

export function isUnit({ item }: Terminal): boolean {
  return item.kind === "ac" || item.kind === "generator";
}

/** What people call a unit by: the inverter of a grid port, or the generating unit. */
export function unitName({ item }: Terminal): Item {
  return item.kind === "ac" || item.kind === "backup" ? (item.parent ?? item) : item;
}

export function unitNames(units: readonly Terminal[]): string {
  return listed([...new Set(units.map((unit) => unitName(unit).id))]);
}

/**
 * Line conductors of a supply, port, unit or board. Throws NotKnown where it does not say; a backup port of a single-phase
 * inverter need not.
 */
export function linesOf(item: Item, judge: Judge): LineCount {
  const phases = judge.quantity(item, "phases") ?? phasesOfInverter(item, judge);
  const lines = phases && lineCount(phases);
  return lines ?? judge.unknown(item, "phases");
}

function phasesOfInverter({ kind, parent }: Item, judge: Judge): Given | undefined {
  const grid = kind === "backup" ? parent?.children.find((child) => child.kind === "ac") : undefined;
  const phases = grid && judge.quantity(grid, "phases");
  return phases?.value === 1 ? phases : undefined;
}

/** The line that a single-phase unit is on, as it says itself or as something on the way to it does. */
export function lineOf(tree: FeedTree, unit: Terminal): LineName | undefined {
  const own = wordOf(unit.item, "phase");
  if (own) return own as LineName;
  for (let hop = tree.arriving.get(unit); hop; hop = tree.arriving.get(hop.from)) {
    const word = wordOf(hop.by, "phase");
    if (word) return word as LineName;
  }
  return undefined;
}
