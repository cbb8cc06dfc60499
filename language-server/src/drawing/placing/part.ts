import type { Box, Point } from "../boxes/box.js";
import { boxOf } from "../boxes/box-of.js";
import type { Diagram, Node, Wire } from "../diagram.js";
import type { ElkNode } from "../engine.js";
import type { Placed, PlacedWire } from "../layout.js";
import { placed } from "./graph.js";
import { withJunctions } from "./junctions.js";
import { labelSize } from "./label-size.js";
import { leadsOf } from "./leads.js";
import { whole, wholePoint } from "./whole.js";

/** Finds a place for everything in a diagram, in one go. */
export async function placePart(diagram: Diagram): Promise<Placed> {
  const leads = leadsOf(diagram);
  const boxes = new Map(
    diagram.nodes.map((node) => {
      const lead = leads.get(node.id);
      return [node.id, boxOf(node, lead && labelSize(lead))];
    }),
  );
  const carried = new Map([...leads].map(([node, wire]) => [wire, node]));
  const ordered = inOrder(diagram.nodes);
  const ports = new Map<string, string>();
  const children = ordered.map((node, index) => elkNode(node, boxes.get(node.id)!, index, ports));
  const cutEnds = diagram.nodes.some(({ symbol }) => symbol === "continuation");
  const result = await placed({
    children,
    edges: diagram.wires.map((wire, index) => ({
      id: `w${index}`,
      sources: [ports.get(wire.from.port)!],
      targets: [ports.get(wire.to.port)!],
      // A tee may bend; what goes on through the installation should not.
      layoutOptions: { "elk.layered.priority.straightness": carried.has(wire) ? "0" : "10" },
      labels: wire.label.length > 0 && !carried.has(wire) ? [{ text: " ", ...sizeOf(wire) }] : [],
    })),
    // Cut wires end at the edge of the whole part, not of the branch that they belong to.
    ...(cutEnds && { options: { "elk.separateConnectedComponents": "false" } }),
  });
  const spots = new Map((result.children ?? []).map(({ id, x, y }) => [id, { x: whole(x), y: whole(y) }]));
  const at = new Map(ordered.map(({ id }, index) => [id, spots.get(`n${index}`)!]));
  const routed = new Map((result.edges ?? []).map((edge) => [edge.id, edge]));
  return {
    diagram,
    width: whole(result.width),
    height: whole(result.height),
    nodes: diagram.nodes.map((node) => ({ node, box: boxes.get(node.id)!, ...at.get(node.id)! })),
    wires: withJunctions(
      diagram.wires.map((wire, index) => {
        const { sections = [], labels = [] } = routed.get(`w${index}`) ?? {};
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
          ...(label && { label: { x: whole(label.x), y: whole(label.y), ...labelSize(wire) } }),
          ...(carrier !== undefined && { label: carriedLabel(wire, boxes.get(carrier)!, at.get(carrier)!) }),
        };
      }),
    ),
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

/** The graph's node, and the names that its ports have in the graph. */
function elkNode(node: Node, box: Box, index: number, ports: Map<string, string>): ElkNode {
  const atEdge = node.symbol === "continuation" && (node.ports[0]?.side === "west" ? "LAST" : "FIRST");
  return {
    id: `n${index}`,
    width: box.width,
    height: box.height,
    layoutOptions: {
      "elk.portConstraints": "FIXED_POS",
      ...(atEdge && { "elk.layered.layering.layerConstraint": `${atEdge}_SEPARATE` }),
    },
    ports: node.ports.map(({ id, side }, place) => {
      const point = box.ports.get(id)!;
      ports.set(id, `n${index}p${place}`);
      return {
        id: `n${index}p${place}`,
        x: point.x,
        y: point.y,
        width: 0,
        height: 0,
        layoutOptions: { "elk.port.side": side === "west" ? "WEST" : "EAST", "elk.port.borderOffset": "0" },
      };
    }),
  };
}

function sizeOf(wire: Wire): { readonly width: number; readonly height: number } {
  const { w, h } = labelSize(wire);
  return { width: w, height: h };
}
