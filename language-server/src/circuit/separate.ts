import type { Design } from "../design/design.js";
import type { Item, Run } from "../design/things.js";
import { anchorOf } from "./loose.js";

/** Items and runs that nothing joins to the rest: a house of an estate, an array that is not wired yet. */
export interface SeparateWiring {
  /** The id of its first item. */
  readonly id: string;
  readonly items: readonly Item[];
  readonly runs: readonly Run[];
  readonly serves: ReadonlyMap<Item, Item>;
}

/** Kinds that make a piece of wiring a plant; a string on its own is none. */
export const plantKinds = ["supply", "board", "inverter", "battery", "generator", "changeover"] as const;

/**
 * Cuts a design where nothing crosses: neither a run nor an inverter's inside, neither what a way serves nor what a
 * link or a current transformer points at. What is computed of one piece then stays as it is when another is edited.
 */
export function separate(design: Design): SeparateWiring[] {
  const groups = new Groups(design.items);
  const owner = new Map<Run, Item>();
  for (const run of design.runs) {
    const end = run.from?.item ?? run.to?.item ?? design.items[0];
    if (end) owner.set(run, end);
    if (run.from && run.to) groups.join(run.from.item, run.to.item);
  }
  for (const [device, served] of design.serves) groups.join(device, served);
  const firstPlant = design.items.find(({ kind }) => (plantKinds as readonly string[]).includes(kind));
  for (const item of design.items) {
    if (item.kind !== "link" && item.kind !== "ct") continue;
    const anchor = anchorOf(item, design) ?? firstPlant;
    if (anchor) groups.join(item, anchor);
  }

  const found = new Map<number, { id: string; items: Item[]; runs: Run[]; serves: Map<Item, Item> }>();
  for (const item of design.items) {
    const group = groups.of(item);
    const piece = found.get(group);
    if (piece) piece.items.push(item);
    else found.set(group, { id: item.id, items: [item], runs: [], serves: new Map() });
  }
  for (const [run, end] of owner) found.get(groups.of(end))?.runs.push(run);
  for (const [device, served] of design.serves) found.get(groups.of(device))?.serves.set(device, served);
  return [...found.values()];
}

/** Disjoint sets of top-level items, each known by one of its members; what is nested belongs to its outermost item. */
class Groups {
  private readonly numbers = new Map<Item, number>();
  private readonly leaders: number[] = [];

  constructor(items: readonly Item[]) {
    for (const item of items) this.numbers.set(item, this.leaders.push(this.leaders.length) - 1);
  }
  of(item: Item): number {
    let outer = item;
    while (outer.parent) outer = outer.parent;
    return this.leader(this.numbers.get(outer) ?? 0);
  }
  join(one: Item, other: Item): void {
    const a = this.of(one);
    const b = this.of(other);
    // The earlier item leads, so that pieces come in the order of the text.
    if (a !== b) this.leaders[Math.max(a, b)] = Math.min(a, b);
  }
  private leader(number: number): number {
    let at = number;
    while (this.leaders[at] !== at) {
      const next = this.leaders[at]!;
      this.leaders[at] = this.leaders[next]!;
      at = next;
    }
    return at;
  }
}
