import type { Assessment } from "../assessment/assessment.js";
import type { Circuit, Link, Terminal } from "../circuit/circuit.js";
import type { Item, Run } from "../design/things.js";
import { type IsWired, insideOfBoard, insideOfBox } from "./board-of.js";
import { currentsOf, isEarth } from "./currents.js";
import type { Current, Diagram, Node, Port, Side, Wire, WireEnd } from "./diagram.js";
import { withEarth } from "./earth-wires.js";
import { marksOf } from "./marks.js";
import { isOpenToBothSides, type Orientation, opposite, orient } from "./orient.js";
import { dropsOf } from "./run-drops.js";
import { spokenLine } from "./spoken.js";
import { isDrawn, linksOf, symbolOf, transformersOf } from "./symbol-of.js";
import { titleBlockOf } from "./title-block.js";
import { described, joined, labelOf, runLabel } from "./words.js";

/** The single-line diagram of an assessment. Never fails: of a design half written, what is there is drawn. */
export function diagramOf(assessment: Assessment): Diagram {
  const { design, circuit } = assessment;
  const links = circuit.links.filter(isWire);
  const wired = new Set(links.flatMap(({ a, b }) => [a, b]));
  const view: View = {
    circuit,
    orientation: orient(circuit),
    currentAt: currentsOf(circuit),
    isWired: (terminal: Terminal | undefined) => terminal !== undefined && wired.has(terminal),
    wiredOf: byNode([...wired]),
    neutralLinks: linksOf(design.items),
  };
  const { byRun } = dropsOf(assessment);
  const transformers = transformersOf(design.items);
  // Circuits are put together piece by piece; the picture keeps the order of the text.
  const order = new Map<Link["by"], number>(design.runs.map((run, index) => [run, index]));
  const wires = links
    .sort((a, b) => (order.get(a.by) ?? Number.MAX_SAFE_INTEGER) - (order.get(b.by) ?? Number.MAX_SAFE_INTEGER))
    .map((link) => wireOf(link, view, (run, current) => runLabel(run, current, byRun.get(run)), transformers));
  const { nodes, wires: earthWires } = withEarth(
    design.items.filter(isDrawn).map((item) => nodeOf(item, view)),
    design.items,
    view.isWired,
    circuit,
  );
  return {
    title: titleBlockOf(assessment),
    nodes,
    wires: [...wires, ...earthWires],
    marks: marksOf(assessment),
  };
}

interface View {
  readonly circuit: Circuit;
  readonly orientation: Orientation;
  readonly currentAt: (terminal: Terminal) => Exclude<Current, "both">;
  readonly isWired: IsWired;
  readonly wiredOf: ReadonlyMap<Item, readonly Terminal[]>;
  readonly neutralLinks: ReadonlyMap<string, readonly string[]>;
}

/** A run, or what joins two things without one; the inside of a thing is drawn with it. */
function isWire({ a, b, by }: Link): boolean {
  if (!isDrawn(outermost(a.item)) || !isDrawn(outermost(b.item))) return false;
  return by.is === "run" || outermost(a.item) !== outermost(b.item);
}

function outermost(item: Item): Item {
  return item.parent ? outermost(item.parent) : item;
}

function byNode(terminals: readonly Terminal[]): ReadonlyMap<Item, readonly Terminal[]> {
  const found = new Map<Item, Terminal[]>();
  for (const terminal of terminals) {
    const node = outermost(terminal.item);
    const own = found.get(node);
    if (own) own.push(terminal);
    else found.set(node, [terminal]);
  }
  return found;
}

function nodeOf(item: Item, view: View): Node {
  const { circuit, isWired, neutralLinks } = view;
  const ports = portsOf(item, view);
  const inside = item.kind === "board" ? insideOfBoard(item, circuit, isWired) : insideOfBox(item, circuit, isWired);
  return {
    id: item.id,
    symbol: symbolOf(item),
    current: currentOf(item, view),
    label: [...labelOf(item), ...(neutralLinks.get(item.id) ?? [])],
    description: described(item),
    ports,
    ...(inside && { inside }),
  };
}

function currentOf(item: Item, { circuit, currentAt }: View): Current {
  if (item.kind === "inverter") return "both";
  const seen = new Set<Current>();
  const add = (inner: Item): void => {
    for (const name of inner.row?.terminals ?? []) {
      const terminal = circuit.terminals.get(name === "" ? inner.id : `${inner.id}.${name}`);
      if (terminal && (!isEarth(terminal) || inner.kind === "electrode" || inner.kind === "earthing"))
        seen.add(currentAt(terminal));
    }
    for (const child of inner.children) add(child);
  };
  add(item);
  const [only, other] = seen;
  return only === undefined ? "ac" : other === undefined ? only : "both";
}

/** Where wires can land: what a thing always shows, and whatever else a run names. */
function portsOf(item: Item, view: View): Port[] {
  const { circuit, orientation, wiredOf } = view;
  const shown: Terminal[] = [];
  const show = (id: string): void => {
    const terminal = circuit.terminals.get(id);
    if (terminal && !shown.includes(terminal)) shown.push(terminal);
  };
  if (item.kind === "inverter") for (const child of item.children) show(child.id);
  else for (const name of item.row?.terminals ?? []) if (isAlwaysShown(item, name)) show(`${item.id}.${name}`);
  for (const terminal of wiredOf.get(item) ?? []) show(terminal.id);
  return shown.flatMap((terminal): Port[] => {
    const port = portText(terminal, item);
    if (!isOpenToBothSides(terminal)) return [{ id: terminal.id, side: orientation.side(terminal), ...port }];
    const sides = new Set(terminal.links.filter(isWire).map((link) => openSide(link, terminal, orientation)));
    return (["west", "east"] as const)
      .filter((side) => sides.has(side))
      .map((side) => ({ id: `${terminal.id}@${side}`, side }));
  });
}

function isAlwaysShown(item: Item, name: string): boolean {
  if (name === "earth" || name === "bar") return false;
  // A combiner's own `in` is its bar, which strings reach through the fuses.
  return item.kind !== "terminal-block" && !(item.kind === "combiner" && name === "in");
}

function portText(terminal: Terminal, item: Item): { label?: string } {
  if (item.kind === "inverter") return { label: terminal.item === item ? terminal.name : terminal.item.name };
  if (item.kind === "changeover") return { label: terminal.name };
  return {};
}

function openSide(link: Link, terminal: Terminal, orientation: Orientation): Side {
  const neighbour = link.a === terminal ? link.b : link.a;
  if (neighbour === terminal) return "east";
  if (isOpenToBothSides(neighbour)) return orientation.isLeftOf(neighbour, terminal) ? "west" : "east";
  // Leaves turn towards the block; whatever else is there has a side of its own.
  return orientation.towards(terminal, neighbour);
}

function wireOf(
  link: Link,
  view: View,
  label: (run: Run, current: Exclude<Current, "both">) => string[],
  transformers: ReadonlyMap<string, readonly string[]>,
): Wire {
  const { orientation, currentAt } = view;
  const { a, b, by } = link;
  const isEarthWire = isEarth(a) || isEarth(b);
  const current = isEarthWire ? "earth" : currentAt(a);
  const end = (terminal: Terminal): WireEnd & { readonly side: Side } => {
    const open = isOpenToBothSides(terminal);
    const side = open ? openSide(link, terminal, orientation) : orientation.side(terminal);
    return { node: outermost(terminal.item).id, port: open ? `${terminal.id}@${side}` : terminal.id, side };
  };
  const [first, second] = [end(a), end(b)];
  const isForward =
    first.side === opposite(second.side) ? first.side === "east" : orientation.isLeftOf(a, b) || a === b;
  const [from, to] = isForward ? [first, second] : [second, first];
  const lines = by.is === "run" ? [...label(by, current), ...(transformers.get(by.id) ?? [])] : [];
  return {
    id: by.is === "run" ? by.id : `serves ${by.id}`,
    isRun: by.is === "run",
    current,
    from: { node: from.node, port: from.port },
    to: { node: to.node, port: to.port },
    label: lines,
    description: joined(
      ", ",
      `${by.id}: ${by.is === "run" ? "run" : "feed"} from ${a.id} to ${b.id}`,
      // Its name has been said.
      ...lines.map((line) => spokenLine(line.startsWith(`${by.id} `) ? line.slice(by.id.length + 1) : line)),
    ),
  };
}
