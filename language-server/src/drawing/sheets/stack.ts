import { boxOf } from "../boxes/box-of.js";
import type { Diagram, Mark } from "../diagram.js";
import type { Placed, PlacedNode } from "../layout.js";
import { cut, type Part, terminalOf } from "../placing/cut.js";
import { moved } from "../placing/moved.js";
import { placePart } from "../placing/part.js";

/** A part that is drawn with flags where its cut wires go on. */
export interface FlaggedPart {
  readonly part: Part;
  readonly placed: Placed;
}

export function flaggedParts(diagram: Diagram, limit: number): Promise<FlaggedPart[]> {
  return Promise.all(
    cut(diagram, limit).map(async (part) => ({ part, placed: await placePart(flagged(part, () => "sheet")) })),
  );
}

/** With the words that its flags say: the sheet, and the terminal. */
function flagged({ diagram, continuations }: Part, sheetOf: (node: string) => string): Diagram {
  const byNode = new Map(continuations.map((each) => [each.node, each]));
  return {
    ...diagram,
    nodes: diagram.nodes.map((node) => {
      const continuation = byNode.get(node.id);
      if (!continuation) return node;
      return { ...node, label: [sheetOf(continuation.there.node), `to ${terminalOf(continuation.there)}`] };
    }),
  };
}

const gap = 48;

/** Parts below each other, as one drawing. */
export function stacked(
  whole: Diagram,
  parts: readonly FlaggedPart[],
  marks: readonly Mark[],
  sheetOf: (node: string) => string,
): Placed {
  let [width, height] = [0, 0];
  const nodes: PlacedNode[] = [];
  const wires: Placed["wires"][number][] = [];
  for (const { part, placed } of parts) {
    const top = height === 0 ? 0 : height + gap;
    const labels = new Map(flagged(part, sheetOf).nodes.map((node) => [node.id, node]));
    for (const { node, box, x, y } of placed.nodes) {
      const own = labels.get(node.id)!;
      nodes.push({ node: own, box: own.symbol === "continuation" ? boxOf(own) : box, x, y: y + top });
    }
    wires.push(...placed.wires.map((wire) => moved(wire, { x: 0, y: top })));
    width = Math.max(width, placed.width);
    height = top + placed.height;
  }
  const diagram: Diagram = {
    ...whole,
    nodes: nodes.map(({ node }) => node),
    wires: wires.map(({ wire }) => wire),
    marks,
  };
  return { diagram, width, height, nodes, wires };
}
