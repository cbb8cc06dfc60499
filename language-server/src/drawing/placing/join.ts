import type { Point } from "../boxes/box.js";
import type { Diagram, Wire } from "../diagram.js";
import type { Placed, PlacedNode, PlacedWire } from "../layout.js";
import type { Part } from "./cut.js";
import { placed } from "./graph.js";
import { moved } from "./moved.js";
import { whole, wholePoint } from "./whole.js";

export interface PlacedPart {
  readonly part: Part;
  readonly placed: Placed;
}

/** Parts placed beside each other, with the wires that were cut joined again: one drawing of the whole diagram. */
export async function join(diagram: Diagram, parts: readonly PlacedPart[]): Promise<Placed> {
  const cutWires = diagram.wires.filter((wire) =>
    parts.some(({ part }) => part.continuations.some((continuation) => continuation.wire === wire)),
  );
  const result = await placed({
    children: parts.map(({ part, placed: { width, height, nodes } }, index) => ({
      id: `n${index}`,
      width,
      height,
      layoutOptions: { "elk.portConstraints": "FIXED_POS" },
      ports: part.continuations.map(({ node, wire, side }) => ({
        id: `n${index}w${cutWires.indexOf(wire)}`,
        x: side === "west" ? 0 : width,
        y: portOf(nodes.find((each) => each.node.id === node)!).y,
        width: 0,
        height: 0,
        layoutOptions: { "elk.port.side": side === "west" ? "WEST" : "EAST", "elk.port.borderOffset": "0" },
      })),
    })),
    edges: cutWires.map((wire, index) => ({
      id: `w${index}`,
      sources: [`n${partWith(wire, "from", parts)}w${index}`],
      targets: [`n${partWith(wire, "to", parts)}w${index}`],
    })),
    options: { "elk.spacing.nodeNode": "44" },
  });
  const offsets = parts.map((_, index) => {
    const { x, y } = result.children!.find(({ id }) => id === `n${index}`)!;
    return { x: whole(x), y: whole(y) };
  });
  const between = cutWires.map((_, index) => {
    const { sections = [] } = result.edges!.find(({ id }) => id === `w${index}`)!;
    return sections.flatMap(({ startPoint, bendPoints = [], endPoint }) => [startPoint, ...bendPoints, endPoint]);
  });

  const nodes = new Map<string, PlacedNode>();
  const pieces = new Map<string, PlacedWire[]>();
  for (const [index, { placed: own }] of parts.entries()) {
    const offset = offsets[index]!;
    for (const { x, y, ...each } of own.nodes) nodes.set(each.node.id, { ...each, x: x + offset.x, y: y + offset.y });
    for (const each of own.wires) {
      const { id } = each.wire;
      pieces.set(id, [...(pieces.get(id) ?? []), moved(each, offset)]);
    }
  }
  return {
    diagram,
    width: whole(result.width),
    height: whole(result.height),
    nodes: diagram.nodes.map(({ id }) => nodes.get(id)!),
    wires: diagram.wires.map((wire): PlacedWire => {
      const own = pieces.get(wire.id) ?? [];
      const [only] = own;
      const way = between[cutWires.indexOf(wire)];
      return way && only ? joined(wire, own, way.map(wholePoint)) : only!;
    }),
  };
}

function portOf({ y, box, node }: PlacedNode): Point {
  return { x: 0, y: y + box.ports.get(node.ports[0]!.id)!.y };
}

function partWith(wire: Wire, end: "from" | "to", parts: readonly PlacedPart[]): number {
  return parts.findIndex(({ part }) =>
    part.continuations.some((each) => each.wire === wire && each.here.port === wire[end].port),
  );
}

function joined(wire: Wire, halves: readonly PlacedWire[], between: readonly Point[]): PlacedWire {
  const first = halves.find((half) => half.wire.from === wire.from)!;
  const last = halves.find((half) => half.wire.to === wire.to)!;
  const { label } = first;
  return {
    wire,
    points: straightened([...first.points, ...between, ...last.points]),
    junctions: [...first.junctions, ...last.junctions],
    ...(label && { label }),
  };
}

/** Without the points in the middle of a straight stretch. */
function straightened(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const [before, last] = [kept[kept.length - 2], kept[kept.length - 1]];
    if (last && last.x === point.x && last.y === point.y) continue;
    if (before && last && ((before.x === last.x && last.x === point.x) || (before.y === last.y && last.y === point.y)))
      kept.pop();
    kept.push(point);
  }
  return kept;
}
