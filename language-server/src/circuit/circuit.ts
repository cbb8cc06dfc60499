import type { Item, Run } from "../design/things.js";

/** A point where conductors land: `Q1.in`, `INV.pv1`, `S1.out`. */
export interface Terminal {
  readonly id: string;
  readonly item: Item;
  /** `in`, `out`, or empty for a port's only terminal. */
  readonly name: string;
  readonly links: Link[];
}

/** A joint between two terminals: a run laid between them, or a device's inside. */
export interface Link {
  readonly a: Terminal;
  readonly b: Terminal;
  readonly by: Run | Item;
  /** Whether it is a switching device that can open this joint. */
  readonly opens: boolean;
}

export interface Circuit {
  readonly terminals: ReadonlyMap<string, Terminal>;
  readonly links: readonly Link[];
}

export function otherEnd(link: Link, terminal: Terminal): Terminal {
  return link.a === terminal ? link.b : link.a;
}
