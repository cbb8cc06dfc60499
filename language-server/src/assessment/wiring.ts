import type { Circuit, Terminal } from "../circuit/circuit.js";
import { otherEnd } from "../circuit/circuit.js";
import type { Design } from "../design/design.js";
import type { Problem } from "../design/model.js";
import type { Item, Run } from "../design/things.js";

/** Kinds that are nothing unless wired. Boards, supplies and batteries may stand alone in a design half written. */
const wiredKinds = new Set([
  "string",
  "isolator",
  "fuse",
  "breaker",
  "rcd",
  "rcbo",
  "spd",
  "meter",
  "combiner",
  "changeover",
  "terminal-block",
]);
/** Wiring of these carries no source, and is none the worse for it. */
const earthKinds = new Set(["earthing", "electrode"]);

/** What is wrong with how things are joined, whatever they are rated for. */
export function wiringProblems(design: Design, circuit: Circuit): Problem[] {
  const problems: Problem[] = [];
  for (const run of design.runs) {
    if (!run.from || !run.to || run.from.item !== run.to.item || run.from.terminal !== run.to.terminal) continue;
    problems.push({
      id: "self-joined",
      severity: "error",
      message: `${run.id} leaves and lands on ${terminalName(run)}: it joins nothing. Name the terminal it should reach.`,
      place: run.declaration.to?.place ?? run.declaration.namePlace,
    });
  }
  // A run that names the item and whose other end names nothing is what has to be mended.
  const named = new Set(design.runs.flatMap(({ from, to }) => [from, to]).flatMap((end) => (end ? [end.item] : [])));
  for (const item of design.items)
    if (wiredKinds.has(item.kind) && !named.has(item) && !isWired(item, circuit)) problems.push(unwired(item));
  problems.push(...deadLoops(design, circuit));
  return problems;
}

function terminalName(run: Run): string {
  const end = run.to;
  return end ? (end.terminal ? `${end.item.id}.${end.terminal}` : end.item.id) : "";
}

function isWired(item: Item, circuit: Circuit): boolean {
  for (const name of item.row?.terminals ?? []) {
    const terminal = circuit.terminals.get(name === "" ? item.id : `${item.id}.${name}`);
    if (terminal?.links.some(({ by }) => by.is === "run" || outermost(by) !== outermost(item))) return true;
  }
  return item.children.some((child) => isWired(child, circuit));
}

/** A joint by something else's inside is a way that `serves` it. */
function outermost(item: Item): Item {
  return item.parent ? outermost(item.parent) : item;
}

function unwired(item: Item): Problem {
  return {
    id: "unwired-item",
    severity: "warning",
    message: `No run reaches ${item.id}: it takes no part in the installation. Wire it with a run, or delete it.`,
    place: item.declaration.namePlace,
  };
}

/** Pieces of wiring with runs in them that no string, battery or supply feeds. */
function deadLoops(design: Design, circuit: Circuit): Problem[] {
  const fed = new Set<Terminal>();
  const queue: Terminal[] = [];
  for (const terminal of circuit.terminals.values()) {
    const { item } = terminal;
    // An inverter's ports are fed from inside; a board may stand in a design whose supply is not written yet.
    if (item.row?.source || item.parent || item.kind === "board" || earthKinds.has(item.kind)) queue.push(terminal);
  }
  for (let terminal = queue.pop(); terminal; terminal = queue.pop()) {
    if (fed.has(terminal)) continue;
    fed.add(terminal);
    for (const link of terminal.links) queue.push(otherEnd(link, terminal));
  }
  const problems: Problem[] = [];
  const told = new Set<Terminal>();
  for (const run of design.runs) {
    if (!run.from || !run.to) continue;
    const { item, terminal } = run.from;
    const start = circuit.terminals.get(terminal === "" ? item.id : `${item.id}.${terminal}`);
    if (!start || fed.has(start) || told.has(start)) continue;
    mark(start, told);
    problems.push({
      id: "no-source",
      severity: "warning",
      message: `${run.id} belongs to wiring that no string, battery or supply feeds. Join it to a source, or delete it.`,
      place: run.declaration.namePlace,
    });
  }
  return problems;
}

function mark(start: Terminal, told: Set<Terminal>): void {
  const queue = [start];
  for (let terminal = queue.pop(); terminal; terminal = queue.pop()) {
    if (told.has(terminal)) continue;
    told.add(terminal);
    for (const link of terminal.links) queue.push(otherEnd(link, terminal));
  }
}
