import type { Box, Point } from "./boxes/box.js";
import type { Diagram, Node, Wire } from "./diagram.js";
import { cut } from "./placing/cut.js";
import { join } from "./placing/join.js";
import { placePart } from "./placing/part.js";

/** A diagram with a place for everything. */
export interface Placed {
  readonly diagram: Diagram;
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly PlacedNode[];
  readonly wires: readonly PlacedWire[];
}
export interface PlacedNode {
  readonly node: Node;
  readonly box: Box;
  readonly x: number;
  readonly y: number;
}
export interface PlacedWire {
  readonly wire: Wire;
  /** From the left end to the right one; every stretch is level or upright. */
  readonly points: readonly Point[];
  /** Where it meets other wires of the same terminal. */
  readonly junctions: readonly Point[];
  /** Upper left corner and size of its label; undefined where it has none. */
  readonly label?: Point & { readonly w: number; readonly h: number };
}

/**
 * Finds a place for everything: the same for the same diagram, on every machine. Of more nodes than go at once (the time
 * grows faster than their number) parts are placed, and remembered, so that a change in one leaves the others alone.
 */
export async function layout(diagram: Diagram, atOnce = 60): Promise<Placed> {
  const parts = cut(diagram, atOnce);
  const placed = await Promise.all(parts.map(async (part) => ({ part, placed: await placePart(part.diagram) })));
  const [only, another] = placed;
  return only && !another ? only.placed : join(diagram, placed);
}
