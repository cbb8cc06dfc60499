import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Circuit, Link, Source, Terminal } from "./circuit.js";
import type { Situation } from "./modes.js";
import { isStanding } from "./pieces.js";
import { whyIneffective } from "./systems.js";
import type { CutGraph } from "./vertex-cuts.js";

/** A circuit as a graph of what cannot be parted, with the devices that can part it as the removable vertices. */
export interface IsolationGraph extends CutGraph {
  /** The device that a removable vertex stands for. */
  readonly devices: readonly (Item | undefined)[];
}

/** Devices that may be relied upon to open, each once. */
export function openingDevices(circuit: Circuit): Set<Item> {
  const found = new Set<Item>();
  for (const { by, opens } of circuit.links)
    if (opens && by.is === "item" && !found.has(by) && !whyIneffective(circuit, by)) found.add(by);
  for (const { inverter } of circuit.converters)
    if (flagOf(inverter, "built-in-dc-isolator") === true) found.add(inverter);
  return found;
}

/**
 * The graph of a circuit by day with the grid, when most feeds, with the changeovers as they stand: from some sources to
 * the terminals that should become dead. All that has nothing to open between is one vertex; an inverter's inside is
 * one that all its ports lead into and out of.
 */
export function isolationGraph(
  circuit: Circuit,
  sources: readonly Source[],
  targets: readonly Terminal[],
  positions: NonNullable<Situation["positions"]>,
): IsolationGraph {
  const opening = openingDevices(circuit);
  const situation = { light: "day", supply: "grid", positions } as const;
  const isThere = (link: Link): boolean => isStanding(link, situation);

  const joined = new Joined();
  for (const link of circuit.links) if (isThere(link) && !opensFor(link, opening)) joined.join(link.a, link.b);

  const vertices = new Vertices();
  const from = vertices.add();
  const to = vertices.add();
  const pieceVertex = new Map<Terminal, number>();
  const at = (terminal: Terminal): number => {
    const root = joined.rootOf(terminal);
    let vertex = pieceVertex.get(root);
    if (vertex === undefined) {
      vertex = vertices.add();
      pieceVertex.set(root, vertex);
    }
    return vertex;
  };
  const deviceVertex = new Map<Item, number>();
  const of = (device: Item): number => {
    let vertex = deviceVertex.get(device);
    if (vertex === undefined) {
      vertex = vertices.add(device);
      deviceVertex.set(device, vertex);
    }
    return vertex;
  };

  for (const link of circuit.links) {
    if (!isThere(link) || !opensFor(link, opening) || link.by.is === "run") continue;
    const device = of(link.by);
    for (const end of [at(link.a), at(link.b)]) vertices.joinBothWays(end, device);
  }
  for (const { inverter, ports } of circuit.converters) {
    const inside = vertices.add();
    for (const { kind, terminal } of ports) {
      if (kind !== "tracker" || !opening.has(inverter)) vertices.joinBothWays(at(terminal), inside);
      else {
        vertices.joinBothWays(at(terminal), of(inverter));
        vertices.joinBothWays(of(inverter), inside);
      }
    }
  }
  for (const { terminal } of sources) vertices.join(from, at(terminal));
  for (const terminal of targets) vertices.join(at(terminal), to);
  return vertices.graph(from, to);
}

function opensFor({ opens, by }: Link, opening: ReadonlySet<Item>): boolean {
  return opens && by.is === "item" && opening.has(by);
}

class Vertices {
  private readonly out: number[][] = [];
  private readonly into: number[][] = [];
  private readonly devices: (Item | undefined)[] = [];

  add(device?: Item): number {
    this.out.push([]);
    this.into.push([]);
    return this.devices.push(device) - 1;
  }
  join(tail: number, head: number): void {
    if (tail === head) return;
    this.out[tail]!.push(head);
    this.into[head]!.push(tail);
  }
  joinBothWays(a: number, b: number): void {
    this.join(a, b);
    this.join(b, a);
  }
  graph(from: number, to: number): IsolationGraph {
    const { out, into, devices } = this;
    return {
      size: out.length,
      from,
      to,
      out,
      in: into,
      devices,
      removable: devices.map((device) => device !== undefined),
    };
  }
}

/** Terminals that nothing can part, as disjoint sets. */
class Joined {
  private readonly parents = new Map<Terminal, Terminal>();

  rootOf(terminal: Terminal): Terminal {
    let root = terminal;
    for (let next = this.parents.get(root); next; next = this.parents.get(root)) root = next;
    for (let step = terminal; step !== root; ) {
      const next = this.parents.get(step)!;
      this.parents.set(step, root);
      step = next;
    }
    return root;
  }
  join(a: Terminal, b: Terminal): void {
    const [rootA, rootB] = [this.rootOf(a), this.rootOf(b)];
    if (rootA !== rootB) this.parents.set(rootA, rootB);
  }
}
