import type { Point } from "../boxes/box.js";
import type { PlacedWire } from "../layout.js";

/**
 * Where wires of one terminal part: every point from which they leave in three directions or more. Each is given to the
 * first of the wires, because a dot is drawn once.
 */
export function withJunctions(wires: readonly Omit<PlacedWire, "junctions">[]): PlacedWire[] {
  const byPort = new Map<string, number[]>();
  for (const [index, { wire }] of wires.entries())
    for (const { port } of [wire.from, wire.to]) byPort.set(port, [...(byPort.get(port) ?? []), index]);
  const dots = new Map<number, Point[]>();
  for (const [first, ...others] of byPort.values()) {
    if (first === undefined || others.length === 0) continue;
    const ways = [first, ...others].map((index) => wires[index]!.points);
    const found = new Map(ways.flat().map((point) => [`${point.x} ${point.y}`, point]));
    const own = [...found.values()].filter((point) => directions(point, ways) > 2);
    dots.set(first, [...(dots.get(first) ?? []), ...own]);
  }
  return wires.map((each, index) => ({ ...each, junctions: dots.get(index) ?? [] }));
}

/** In how many directions wires leave a point. */
function directions({ x, y }: Point, ways: readonly (readonly Point[])[]): number {
  const found = new Set<string>();
  for (const points of ways)
    for (const [index, to] of points.slice(1).entries()) {
      const from = points[index]!;
      if (from.x === x && to.x === x) {
        if (Math.min(from.y, to.y) < y && Math.max(from.y, to.y) >= y) found.add("up");
        if (Math.max(from.y, to.y) > y && Math.min(from.y, to.y) <= y) found.add("down");
      }
      if (from.y === y && to.y === y) {
        if (Math.min(from.x, to.x) < x && Math.max(from.x, to.x) >= x) found.add("left");
        if (Math.max(from.x, to.x) > x && Math.min(from.x, to.x) <= x) found.add("right");
      }
    }
  return found.size;
}
