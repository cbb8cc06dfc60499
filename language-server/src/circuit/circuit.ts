import type { Item, Run } from "../design/things.js";

/** A point where conductors land: `Q1.in`, `INV.pv1`, `S1.out`. */
export interface Terminal {
  readonly id: string;
  readonly item: Item;
  /** `in`, `out`, or empty for a port's only terminal. */
  readonly name: string;
  readonly links: Link[];
}

/** A joint between two terminals by conductors: a run laid between them, or a device's inside. */
export interface Link {
  readonly a: Terminal;
  readonly b: Terminal;
  readonly by: Run | Item;
  /** Whether it is a switching device that can open this joint. */
  readonly opens: boolean;
  /** For a changeover switch: the position in which this joint is closed. */
  readonly position?: Position;
}
export type Position = "grid" | "backup";

export type PortKind = "tracker" | "battery" | "ac" | "backup";

/**
 * An inverter's ports. No conductor joins them, so they are no links: energy may come out of one while another is fed.
 */
export interface Converter {
  readonly inverter: Item;
  readonly ports: readonly { readonly kind: PortKind; readonly terminal: Terminal }[];
}

/** Where energy enters the circuit. */
export interface Source {
  /** The item's id. */
  readonly id: string;
  readonly kind: "pv" | "battery" | "grid" | "generator" | "stored";
  readonly item: Item;
  readonly terminal: Terminal;
}

export interface Circuit {
  readonly terminals: ReadonlyMap<string, Terminal>;
  readonly links: readonly Link[];
  readonly converters: readonly Converter[];
  readonly sources: readonly Source[];
}

export function otherEnd(link: Link, terminal: Terminal): Terminal {
  return link.a === terminal ? link.b : link.a;
}

/** The terminal of an item by its name there; an empty name is a port's only terminal. */
export function terminalOf(circuit: Circuit, item: Item, name = ""): Terminal | undefined {
  return circuit.terminals.get(name === "" ? item.id : `${item.id}.${name}`);
}

/** Every terminal of an item and of all that is nested in it. */
export function terminalsOf(circuit: Circuit, item: Item): Terminal[] {
  const found: Terminal[] = [];
  const add = (inner: Item): void => {
    for (const name of inner.row?.terminals ?? []) {
      const terminal = terminalOf(circuit, inner, name);
      // An earth terminal carries no source; whatever reaches it is a fault, not a feed.
      if (terminal && name !== "earth") found.push(terminal);
    }
    for (const child of inner.children) add(child);
  };
  add(item);
  return found;
}
