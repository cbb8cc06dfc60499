import type { Node } from "../diagram.js";
import { type Box, even } from "./box.js";

/** Where a wire leaves a part of the drawing. */
export function continuationBox(node: Node): Box {
  const height = even(8);
  return {
    width: 8,
    height,
    ports: new Map(node.ports.map(({ id, side }) => [id, { x: side === "west" ? 0 : 8, y: height / 2 }])),
    shapes: [],
    areas: [],
    corners: new Map(),
  };
}
