import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Link, Position, Terminal } from "./circuit.js";

/** What a builder offers to those that wire the inside of one kind of thing. */
export interface Bench {
  terminal(item: Item, name: string): Terminal;
  join(a: Terminal, b: Terminal, by: Link["by"], opens?: boolean, position?: Position): void;
}

/** Joins an item's own `in` and `out`, where it has both. */
export function wireThrough(item: Item, { terminal, join }: Bench): void {
  const { terminals = [], through } = item.row ?? {};
  if (!through || !terminals.includes("in") || !terminals.includes("out")) return;
  join(terminal(item, "in"), terminal(item, "out"), item, opensByItself(item));
}

/** A fuse opens nothing, unless its carrier is a means of isolation. */
function opensByItself(item: Item): boolean {
  return item.row?.through === "opens" || (item.kind === "fuse" && flagOf(item, "draws-out") === true);
}

/** Nesting is feeding: a combiner's fuse lies between its own outer terminal and the bar. */
export function wireCombiner(combiner: Item, { terminal, join }: Bench): void {
  for (const child of combiner.children) {
    if (child.row?.terminals.includes("out")) join(terminal(child, "out"), terminal(combiner, "in"), combiner);
    else if (child.kind === "spd") join(terminal(child, "in"), terminal(combiner, "in"), combiner);
  }
}

/**
 * A board from its incoming terminal over its main switch to the bar, and from the bar into all that sits on it.
 * What is nested without a way and can be passed through (isolator, meter) lies in series before the bar.
 */
export function wireBoard(board: Item, bench: Bench): void {
  const { terminal, join } = bench;
  const bar = terminal(board, "bar");
  let end = terminal(board, "in");
  for (const main of board.children.filter(isBeforeBar)) {
    join(end, terminal(main, "in"), board);
    end = terminal(main, "out");
  }
  join(end, bar, board);
  for (const child of board.children) if (!isBeforeBar(child)) hang(child, bar, board, bench);
}

export function isBeforeBar(child: Item): boolean {
  return (child.kind === "isolator" || child.kind === "meter") && child.declaration.way === undefined;
}

/** Joins something nested to what feeds it: the bar, or the outgoing side of an RCD. */
function hang(child: Item, feeding: Terminal, by: Item, bench: Bench): void {
  if (!child.row?.terminals.includes("in")) return;
  bench.join(feeding, bench.terminal(child, "in"), by);
  if (child.kind !== "rcd") return;
  for (const inner of child.children) hang(inner, bench.terminal(child, "out"), child, bench);
}

/**
 * A battery from its cells over what is built into it to its terminals. The cells are a terminal of their own that no
 * run can name: they stay live whatever is opened.
 */
export function wireBattery(battery: Item, { terminal, join }: Bench): Terminal {
  const cells = terminal(battery, "cells");
  let end = cells;
  for (const inner of battery.children) {
    if (!inner.row?.terminals.includes("in")) continue;
    join(end, terminal(inner, "in"), battery);
    end = terminal(inner, "out");
  }
  join(end, terminal(battery, "out"), battery, flagOf(battery, "built-in-isolator") === true);
  return cells;
}

export function wireChangeover(item: Item, { terminal, join }: Bench): void {
  const out = terminal(item, "out");
  join(terminal(item, "grid"), out, item, true, "grid");
  join(terminal(item, "backup"), out, item, true, "backup");
}
