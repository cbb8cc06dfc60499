import { type Box, factSize, lineHeight, type Point } from "./boxes/box.js";
import { boxOf } from "./boxes/box-of.js";
import type { Diagram, Node, Wire } from "./diagram.js";
import { type ElkNode, engine } from "./engine.js";
import { textWidth } from "./text-width.js";

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

export const wireTextSize = factSize - 0.5;

const options: Readonly<Record<string, string>> = {
  "elk.algorithm": "layered",
  "elk.direction": "RIGHT",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.randomSeed": "1",
  // The order of the text decides wherever nothing else does: a new line moves what stands behind it, and no more.
  "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
  "elk.layered.crossingMinimization.semiInteractive": "false",
  "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
  "elk.layered.nodePlacement.favorStraightEdges": "true",
  "elk.layered.thoroughness": "4",
  // The order of the text leaves nothing for it to mend, and it takes half of the time.
  "elk.layered.crossingMinimization.greedySwitch.type": "OFF",
  "elk.edgeLabels.placement": "CENTER",
  "elk.layered.edgeLabels.sideSelection": "ALWAYS_UP",
  "elk.layered.spacing.nodeNodeBetweenLayers": "8",
  "elk.layered.spacing.edgeNodeBetweenLayers": "10",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "12",
  "elk.spacing.nodeNode": "22",
  "elk.spacing.edgeNode": "16",
  "elk.spacing.edgeEdge": "14",
  "elk.spacing.edgeLabel": "3",
  "elk.spacing.labelNode": "6",
  "elk.spacing.componentComponent": "40",
  "elk.aspectRatio": "1.9",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
};

/**
 * From so many nodes on, straightness is sought in a way whose time grows with their number alone: a few crossings more
 * for a tenth of the time.
 */
const manyNodes = 60;
const forMany: Readonly<Record<string, string>> = {
  ...options,
  "elk.layered.nodePlacement.strategy": "BRANDES_KOEPF",
  "elk.layered.thoroughness": "1",
};

/** Finds a place for everything: the same for the same diagram, on every machine. */
export async function layout(diagram: Diagram): Promise<Placed> {
  const leads = leadsOf(diagram);
  const boxes = new Map(
    diagram.nodes.map((node) => {
      const lead = leads.get(node.id);
      return [node.id, boxOf(node, lead && labelSize(lead))];
    }),
  );
  const carried = new Map([...leads].map(([node, wire]) => [wire, node]));
  const graph: ElkNode = {
    id: "sheet",
    layoutOptions: diagram.nodes.length < manyNodes ? options : forMany,
    children: inOrder(diagram.nodes).map((node) => elkNode(node, boxes.get(node.id)!)),
    edges: diagram.wires.map((wire) => ({
      id: wire.id,
      sources: [portId(wire.from.port)],
      targets: [portId(wire.to.port)],
      // A tee may bend; what goes on through the installation should not.
      layoutOptions: { "elk.layered.priority.straightness": carried.has(wire) ? "0" : "10" },
      labels: wire.label.length > 0 && !carried.has(wire) ? [{ text: wire.id, ...labelSize(wire) }] : [],
    })),
  };
  const elk = await engine();
  const result = await elk.layout(graph);
  const at = new Map((result.children ?? []).map((child) => [child.id, { x: whole(child.x), y: whole(child.y) }]));
  const routed = new Map((result.edges ?? []).map((edge) => [edge.id, edge]));
  return {
    diagram,
    width: whole(result.width),
    height: whole(result.height),
    nodes: diagram.nodes.map((node) => ({ node, box: boxes.get(node.id)!, ...at.get(nodeId(node.id))! })),
    wires: diagram.wires.map((wire): PlacedWire => {
      const { sections = [], junctionPoints = [], labels = [] } = routed.get(wire.id) ?? {};
      const points = sections.flatMap(({ startPoint, bendPoints = [], endPoint }) => [
        startPoint,
        ...bendPoints,
        endPoint,
      ]);
      const [label] = labels;
      const carrier = carried.get(wire);
      return {
        wire,
        points: points.map(wholePoint),
        junctions: junctionPoints.map(wholePoint),
        ...(label && { label: { x: whole(label.x), y: whole(label.y), ...labelSize(wire) } }),
        ...(carrier !== undefined && { label: carriedLabel(wire, boxes.get(carrier)!, at.get(nodeId(carrier))!) }),
      };
    }),
  };
}

function carriedLabel(wire: Wire, { leadLabel = { x: 0, y: 0 } }: Box, at: Point): PlacedWire["label"] {
  return { x: at.x + leadLabel.x, y: at.y + leadLabel.y, ...labelSize(wire) };
}

/** Arrays land above batteries on every inverter: what is written first would else draw its wire across the others. */
function inOrder(nodes: readonly Node[]): Node[] {
  const isLow = ({ symbol }: Node): boolean => symbol === "battery";
  return [...nodes.filter((node) => !isLow(node)), ...nodes.filter(isLow)];
}

function elkNode(node: Node, box: Box): ElkNode {
  return {
    id: nodeId(node.id),
    width: box.width,
    height: box.height,
    layoutOptions: { "elk.portConstraints": "FIXED_POS" },
    ports: node.ports.map(({ id, side }) => {
      const point = box.ports.get(id)!;
      return {
        id: portId(id),
        x: point.x,
        y: point.y,
        width: 0,
        height: 0,
        layoutOptions: { "elk.port.side": side === "west" ? "WEST" : "EAST", "elk.port.borderOffset": "0" },
      };
    }),
  };
}

/** Surge protective devices with one wire carry its label themselves. */
function leadsOf({ nodes, wires }: Diagram): ReadonlyMap<string, Wire> {
  const tees = new Set(nodes.flatMap(({ id, symbol, inside }) => (symbol === "spd" && !inside ? [id] : [])));
  const found = new Map<string, Wire[]>();
  for (const wire of wires)
    for (const { node } of [wire.from, wire.to])
      if (tees.has(node)) found.set(node, [...(found.get(node) ?? []), wire]);
  const only = new Map<string, Wire>();
  for (const [node, [wire, another]] of found)
    if (wire && !another && wire.label.length > 0 && wire.from.node !== wire.to.node) only.set(node, wire);
  // A wire between two of them is carried by one.
  const taken = new Set<Wire>();
  for (const [node, wire] of only) {
    if (taken.has(wire)) only.delete(node);
    taken.add(wire);
  }
  return only;
}

/** An item and its only terminal may have one name: nodes and ports are told apart. */
function nodeId(id: string): string {
  return `node ${id}`;
}
function portId(id: string): string {
  return `port ${id}`;
}

function labelSize({ label }: Wire): { width: number; height: number; w: number; h: number } {
  let widest = 0;
  for (const [index, words] of label.entries()) widest = Math.max(widest, textWidth(words, wireTextSize, index === 0));
  const [w, h] = [Math.ceil(widest) + 8, Math.ceil(label.length * (lineHeight - 0.5)) + 2];
  return { width: w, height: h, w, h };
}

function whole(value = 0): number {
  return Math.round(value * 2) / 2;
}

function wholePoint({ x, y }: Point): Point {
  return { x: whole(x), y: whole(y) };
}
