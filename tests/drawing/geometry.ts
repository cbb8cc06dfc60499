import type { Area, Point } from "../../language-server/src/drawing/boxes/box.js";
import type { Placed, PlacedWire } from "../../language-server/src/drawing/layout.js";

/** What is wrong with a placed diagram, as sentences: empty for one that an eye would accept. */
export function faults(placed: Placed): string[] {
  return [
    ...overlaps(placed),
    ...wireFaults(placed),
    ...coveredWires(placed),
    ...placed.wires.flatMap((wire) => labelFaults(wire, placed)),
    ...outside(placed),
  ];
}

interface Placement extends Area {
  /** Things of one owner are drawn by one hand and checked against each other too. */
  readonly owner: string;
}

/** Every symbol and text of the drawing, where it stands. */
function areas({ nodes, wires }: Placed): Placement[] {
  const found: Placement[] = [];
  for (const { node, box, x, y } of nodes)
    for (const area of box.areas) if (area.w > 0) found.push({ ...area, x: x + area.x, y: y + area.y, owner: node.id });
  for (const { wire, label } of wires)
    if (label) found.push({ ...label, what: `label of ${wire.id}`, owner: `label ${wire.id}` });
  return found;
}

/** Rounding to half units may let two things touch. */
const touch = 1;

function overlaps(placed: Placed): string[] {
  const all = areas(placed).sort((a, b) => a.x - b.x);
  const found: string[] = [];
  for (const [index, a] of all.entries())
    for (const b of all.slice(index + 1)) {
      if (b.x >= a.x + a.w - touch) break;
      if (a.y + a.h - touch > b.y && b.y + b.h - touch > a.y)
        found.push(`${a.owner} (${a.what}) and ${b.owner} (${b.what}) overlap`);
    }
  const boxes = placed.nodes;
  for (const [index, a] of boxes.entries())
    for (const b of boxes.slice(index + 1))
      if (
        a.x + a.box.width - touch > b.x &&
        b.x + b.box.width - touch > a.x &&
        a.y + a.box.height - touch > b.y &&
        b.y + b.box.height - touch > a.y
      )
        found.push(`the boxes of ${a.node.id} and ${b.node.id} overlap`);
  return found;
}

/** Wires are level or upright, begin and end on their ports, and run through no box and no text. */
function wireFaults(placed: Placed): string[] {
  const found: string[] = [];
  const ports = new Map<string, Point>();
  for (const { node, box, x, y } of placed.nodes)
    for (const port of node.ports) {
      const at = box.ports.get(port.id);
      if (at) ports.set(port.id, { x: x + at.x, y: y + at.y });
      else found.push(`${port.id} has no place on ${node.id}`);
    }
  const all = areas(placed);
  for (const { wire, points } of placed.wires) {
    const [first, last] = [points[0], points[points.length - 1]];
    if (!first || !last) {
      found.push(`${wire.id} has no way`);
      continue;
    }
    for (const [end, at] of [
      [wire.from, first],
      [wire.to, last],
    ] as const) {
      const port = ports.get(end.port);
      if (!port || Math.abs(port.x - at.x) > touch || Math.abs(port.y - at.y) > touch)
        found.push(`${wire.id} does not reach ${end.port}`);
    }
    for (const [from, to] of stretches(points)) {
      if (from.x !== to.x && from.y !== to.y) found.push(`${wire.id} runs aslant`);
      for (const area of all)
        if (crosses(from, to, area)) found.push(`${wire.id} runs through ${area.owner} (${area.what})`);
    }
  }
  return found;
}

/** Wires that share no terminal may cross, and never run along the same line. */
function coveredWires({ wires }: Placed): string[] {
  const found: string[] = [];
  for (const [index, a] of wires.entries())
    for (const b of wires.slice(index + 1)) {
      const ends = [a.wire.from.port, a.wire.to.port];
      if (ends.includes(b.wire.from.port) || ends.includes(b.wire.to.port)) continue;
      for (const one of stretches(a.points))
        for (const other of stretches(b.points))
          if (isOneLine(one, other)) found.push(`${a.wire.id} and ${b.wire.id} lie on each other`);
    }
  return found;
}

function isOneLine([a, b]: [Point, Point], [c, d]: [Point, Point]): boolean {
  const shared = (axis: "x" | "y"): number =>
    Math.min(Math.max(a[axis], b[axis]), Math.max(c[axis], d[axis])) -
    Math.max(Math.min(a[axis], b[axis]), Math.min(c[axis], d[axis]));
  if (a.y === b.y && c.y === d.y) return Math.abs(a.y - c.y) < 2 && shared("x") > touch;
  if (a.x === b.x && c.x === d.x) return Math.abs(a.x - c.x) < 2 && shared("y") > touch;
  return false;
}

function stretches(points: readonly Point[]): [Point, Point][] {
  return points.slice(1).map((to, index) => [points[index]!, to]);
}

function crosses(from: Point, to: Point, area: Area): boolean {
  const inset = 1.5;
  return (
    Math.max(from.x, to.x) > area.x + inset &&
    Math.min(from.x, to.x) < area.x + area.w - inset &&
    Math.max(from.y, to.y) > area.y + inset &&
    Math.min(from.y, to.y) < area.y + area.h - inset
  );
}

/** A label belongs to the wire that it is nearest to. */
const near = 26;

function labelFaults({ wire, points, label }: PlacedWire, { nodes }: Placed): string[] {
  if (!label) return wire.label.length > 0 ? [`${wire.id} has lost its label`] : [];
  const carrier = nodes.find(
    ({ node, box }) => box.leadLabel && (node.id === wire.from.node || node.id === wire.to.node),
  );
  if (carrier) return [];
  const middle = { x: label.x + label.w / 2, y: label.y + label.h / 2 };
  const distances = stretches(points).map(([from, to]) => {
    const dx = Math.max(Math.min(from.x, to.x) - middle.x, 0, middle.x - Math.max(from.x, to.x));
    const dy = Math.max(Math.min(from.y, to.y) - middle.y, 0, middle.y - Math.max(from.y, to.y));
    return Math.hypot(Math.max(0, dx - label.w / 2), Math.max(0, dy - label.h / 2));
  });
  return Math.min(...distances) > near ? [`the label of ${wire.id} is far from it`] : [];
}

function outside({ nodes, width, height }: Placed): string[] {
  return nodes
    .filter(({ x, y, box }) => x < 0 || y < 0 || x + box.width > width + touch || y + box.height > height + touch)
    .map(({ node }) => `${node.id} stands outside the drawing`);
}
