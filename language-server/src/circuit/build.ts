import type { Design } from "../design/design.js";
import type { End, Item } from "../design/things.js";
import type { Circuit, Converter, Link, PortKind, Source, Terminal } from "./circuit.js";
import { type Bench, wireBattery, wireBoard, wireChangeover, wireCombiner, wireThrough } from "./inside.js";

/**
 * The circuit of a design: one node a terminal, one link a run or a device's inside. Conductors are drawn as one line:
 * a pair of d.c. conductors, or line and neutral with their earth, is one link; which poles a device opens is a fact
 * of the device.
 */
export function buildCircuit(design: Design): Circuit {
  const terminals = new Map<string, Terminal>();
  const links: Link[] = [];
  const converters: Converter[] = [];
  const sources: Source[] = [];

  const bench: Bench = {
    terminal(item, name) {
      const id = name === "" ? item.id : `${item.id}.${name}`;
      let found = terminals.get(id);
      if (!found) {
        found = { id, item, name, links: [] };
        terminals.set(id, found);
      }
      return found;
    },
    join(a, b, by, opens = false, position) {
      const link: Link = position ? { a, b, by, opens, position } : { a, b, by, opens };
      links.push(link);
      a.links.push(link);
      b.links.push(link);
    },
  };

  const addInside = (item: Item): void => {
    for (const name of item.row?.terminals ?? []) bench.terminal(item, name);
    for (const child of item.children) addInside(child);
    wireInside(item, bench);
    if (item.kind === "inverter") converters.push(converterOf(item, bench));
    if (item.row?.source) sources.push(sourceOf(item, item.row.source, bench));
  };
  for (const item of design.items) addInside(item);

  const at = (end: End): Terminal => bench.terminal(end.item, end.terminal);
  for (const run of design.runs) if (run.from && run.to) bench.join(at(run.from), at(run.to), run);
  for (const [device, served] of design.serves) joinServed(device, served, bench);
  return { terminals, links, converters, sources };
}

function wireInside(item: Item, bench: Bench): void {
  if (item.kind === "board") wireBoard(item, bench);
  else if (item.kind === "changeover") wireChangeover(item, bench);
  else wireThrough(item, bench);
  if (item.kind === "combiner") wireCombiner(item, bench);
}

function converterOf(inverter: Item, bench: Bench): Converter {
  const ports = inverter.children
    .filter((child) => isPort(child.kind))
    .map((child) => ({ kind: child.kind as PortKind, terminal: bench.terminal(child, "") }));
  return { inverter, ports };
}

function isPort(kind: string): kind is PortKind {
  return kind === "tracker" || kind === "battery" || kind === "ac" || kind === "backup";
}

function sourceOf(item: Item, kind: Source["kind"], bench: Bench): Source {
  const terminal = kind === "battery" ? wireBattery(item, bench) : bench.terminal(item, "out");
  return { id: item.id, kind, item, terminal };
}

/**
 * `way 3: breaker K3 is B16 serves SHED`: where no run reaches the incoming terminal of what is served, the way feeds it
 * all the same. Old circuits are named in a survey long before anyone traces their cables.
 */
function joinServed(device: Item, served: Item, bench: Bench): void {
  const { terminals = [] } = served.row ?? {};
  if (!terminals.includes("in") || !device.row?.terminals.includes("out")) return;
  const end = bench.terminal(served, "in");
  if (end.links.some(({ by }) => by.is === "run")) return;
  bench.join(bench.terminal(device, "out"), end, device);
}
